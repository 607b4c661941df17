@echo off
rem Starts boundwright; builds it first if that was not done yet or the sources are newer.
rem Relative paths, such as --data DIR, are taken from the folder in which this is called.
setlocal EnableExtensions DisableDelayedExpansion
set "BW_HOME=%~dp0"
set "BW_JAR=%BW_HOME%target\boundwright.jar"

set "BW_JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "BW_JAVA=%JAVA_HOME%\bin\java.exe"
"%BW_JAVA%" -version >nul 2>nul
if errorlevel 1 (
  echo boundwright: there is no java here. Install a JDK 17 or newer and try again.>&2
  exit /b 69
)

powershell -NoProfile -Command ^
  "$jar = Get-Item -LiteralPath $env:BW_JAR -ErrorAction SilentlyContinue;" ^
  "if (-not $jar -or -not (Test-Path -LiteralPath ($env:BW_HOME + 'target\lib'))) { exit 1 };" ^
  "$newer = Get-ChildItem -LiteralPath ($env:BW_HOME + 'src\main'), ($env:BW_HOME + 'pom.xml') -Recurse | Where-Object { $_.LastWriteTime -gt $jar.LastWriteTime } | Select-Object -First 1;" ^
  "if ($newer) { exit 1 } else { exit 0 }"
if not errorlevel 1 goto run

powershell -NoProfile -Command ^
  "$v = (& $env:BW_JAVA -version 2>&1 | Out-String); if ($v -match 'version \"(\d+)' -and [int]$Matches[1] -ge 17) { exit 0 } else { exit 1 }"
if errorlevel 1 (
  echo boundwright: this java is too old; boundwright needs a JDK 17 or newer. Set JAVA_HOME to one.>&2
  exit /b 69
)
where mvn >nul 2>nul
if errorlevel 1 (
  echo boundwright: there is no mvn here. Install Apache Maven 3.8 or newer and try again.>&2
  exit /b 69
)
echo boundwright: building; the first time this takes a minute.>&2
pushd "%BW_HOME%"
if not exist target mkdir target
call mvn -q -B -Dmaven.test.skip=true -Derrorprone.plugin=-Xdiags:compact package >target\build.log 2>&1
if errorlevel 1 (
  type target\build.log >&2
  echo boundwright: the build failed; the whole of it is in %BW_HOME%target\build.log.>&2
  popd
  exit /b 69
)
copy /b "%BW_JAR%"+,, "%BW_JAR%" >nul
popd

:run
"%BW_JAVA%" -XX:TieredStopAtLevel=1 -XX:+UseSerialGC "-Dboundwright.native=%BW_HOME%target\native" -jar "%BW_JAR%" %*
exit /b %ERRORLEVEL%
