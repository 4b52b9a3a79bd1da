using Rookery.Browser.Tests.Browsing;
using Rookery.Browser.Tests.Courses;

// One browser, and one build of the demo course, for all tests of a run.
[assembly: AssemblyFixture(typeof(SharedBrowser))]
[assembly: AssemblyFixture(typeof(DemoCourse))]
