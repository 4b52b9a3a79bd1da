using Microsoft.AspNetCore.Components.WebAssembly.Hosting;
using Rookery.Lab.Browser;
using Rookery.Lab.Deques;
using Rookery.Lab.Files;
using Rookery.Lab.Links;
using Rookery.Lab.Predict;
using Rookery.Lab.Session;
using Rookery.Lab.Shell;
using Rookery.Lab.Studies;
using Rookery.Lab.Texts;

[assembly: System.Runtime.Versioning.SupportedOSPlatform("browser")]

var builder = WebAssemblyHostBuilder.CreateDefault(args);
builder.RootComponents.Add<App>("#lab");
builder.Services.AddSingleton<LabTexts>();
builder.Services.AddSingleton<LabSession>();
builder.Services.AddSingleton<Player>();
builder.Services.AddSingleton<TimeWindow>();
builder.Services.AddSingleton<Presenter>();
builder.Services.AddSingleton<Predictor>();
builder.Services.AddSingleton<DequeSession>();
builder.Services.AddSingleton<StudySession>();
builder.Services.AddSingleton<ILinkPart, DequeLink>();
builder.Services.AddSingleton<ILinkPart, StudyLink>();
builder.Services.AddSingleton<IPage, BrowserPage>();
builder.Services.AddSingleton(TimeProvider.System);
builder.Services.AddSingleton<ILabParts, LabParts>();
builder.Services.AddSingleton<FileDesk>();
builder.Services.AddSingleton<LinkKeeper>();
await BrowserPage.LoadAsync();
await builder.Build().RunAsync();
