@echo off
rem The command line on Windows. Builds itself when needed, then does what it is told.
rem Standard output is the program's alone; what the build has to say goes to standard error.
setlocal
set "DOTNET_NOLOGO=1"
set "DOTNET_CLI_TELEMETRY_OPTOUT=1"
set "DOTNET_GENERATE_ASPNET_CERTIFICATE=false"
set "MSBUILDDISABLENODEREUSE=1"
set "ROOT=%~dp0"
if not defined ROOKERY_COMMAND set "ROOKERY_COMMAND=%~n0"
if not defined ROOKERY_LESSONS set "ROOKERY_LESSONS=%ROOT%lessons"
where dotnet >nul 2>nul
if errorlevel 1 (
    echo rookery: the .NET SDK 10 is needed, and 'dotnet' is not on the PATH. 1>&2
    exit /b 2
)
set "READY=%ROOT%artifacts\ready"
set "PROGRAM=%READY%\publish\Rookery\release\rookery.dll"
if not exist "%READY%" mkdir "%READY%"

rem The newest time of all sources, compared with that of the last build.
powershell -NoProfile -Command ^
    "$s = '%READY%\built'; if (-not (Test-Path $s) -or -not (Test-Path '%PROGRAM%')) { exit 1 };" ^
    "$t = (Get-Item $s).LastWriteTimeUtc;" ^
    "$new = Get-ChildItem '%ROOT%src' -Recurse | Where-Object { $_.LastWriteTimeUtc -gt $t } | Select-Object -First 1;" ^
    "if (-not $new) { $new = Get-ChildItem '%ROOT%*.props', '%ROOT%*.targets', '%ROOT%global.json', '%ROOT%.editorconfig'" ^
    " | Where-Object { $_.LastWriteTimeUtc -gt $t } | Select-Object -First 1 };" ^
    "if ($new) { exit 1 }"
if not errorlevel 1 goto run

echo rookery: building; this takes a minute the first time, and happens again only when the sources change. 1>&2
type nul > "%READY%\begun"
dotnet publish "%ROOT%src\Rookery" -c Release -v quiet -nologo "-p:ArtifactsPath=%READY%" -p:ReadyToRun=true > "%READY%\build.log" 2>&1
if errorlevel 1 dotnet publish "%ROOT%src\Rookery" -c Release -v quiet -nologo "-p:ArtifactsPath=%READY%" > "%READY%\build.log" 2>&1
if errorlevel 1 (
    type "%READY%\build.log" 1>&2
    echo rookery: the build failed; what it said stands above. 1>&2
    exit /b 2
)
move /y "%READY%\begun" "%READY%\built" >nul

:run
dotnet "%PROGRAM%" %*
exit /b %errorlevel%
