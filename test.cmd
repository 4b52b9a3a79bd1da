@echo off
rem Builds everything and runs all tests on Windows. Needs the .NET SDK and nothing else.
rem The last line reads "N passed, N failed"; the exit code is 0 only when something ran and nothing failed.
setlocal
cd /d "%~dp0"
set "DOTNET_NOLOGO=1"
set "DOTNET_CLI_TELEMETRY_OPTOUT=1"
set "DOTNET_GENERATE_ASPNET_CERTIFICATE=false"
set "MSBUILDDISABLENODEREUSE=1"
dotnet build Rookery.slnx -c Release -v quiet -nologo
if errorlevel 1 (
    echo The build failed; no test was run.
    exit /b 1
)
powershell -NoProfile -Command ^
    "$passed = 0; $failed = 0;" ^
    "dotnet test --solution Rookery.slnx -c Release --no-build %* 2>&1 | ForEach-Object { $line = \"$_\"; $line;" ^
    " if ($line -match '^\s*succeeded: (\d+)') { $passed += [int]$Matches[1] };" ^
    " if ($line -match '^\s*failed: (\d+)') { $failed += [int]$Matches[1] } };" ^
    "$code = $LASTEXITCODE; if ($code -eq 0 -and $passed + $failed -eq 0) { $code = 1 };" ^
    "\"$passed passed, $failed failed\"; exit $code"
exit /b %errorlevel%
