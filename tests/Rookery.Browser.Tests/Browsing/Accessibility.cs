using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;

namespace Rookery.Browser.Tests.Browsing;

/// <summary>Has a page judged by axe-core, whose rules follow the Web Content Accessibility Guidelines 2.2.</summary>
internal static class Accessibility
{
    /// <summary>What axe finds: the rule, the place, and what is wrong there. All of its rules, best practices too.</summary>
    public static async Task<string[]> Violations(Visit visit)
    {
        AxeResult result = await visit.Page.RunAxe();
        Assert.NotEmpty(result.Passes);
        return
        [
            .. from rule in result.Violations
               from node in rule.Nodes
               select $"{rule.Id}: {node.Target}: {node.Html}: {string.Join("; ", node.Any.Select(one => one.Message))}",
        ];
    }
}
