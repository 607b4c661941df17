# Builds the program as one folder with its own Java on Windows: target\package\boundwright. The same steps as ./package, which says more.
# This script was written on Linux and has not been run.
$ErrorActionPreference = 'Stop'
Set-Location $PSScriptRoot
$tools = if ($env:JAVA_HOME) { "$env:JAVA_HOME\bin\" } else { '' }
function Run { param($program) & $program @args; if ($LASTEXITCODE -ne 0) { throw "$program ended with $LASTEXITCODE" } }

Run .\boundwright.cmd --version
Run .\boundwright.cmd clip weights --to "$PSScriptRoot\target\weights"
$out = 'target\package'
Remove-Item -Recurse -Force $out -ErrorAction SilentlyContinue
New-Item -ItemType Directory "$out\input\weights" | Out-Null
Run "${tools}java" packaging\Trim.java target\lib "$out\input\lib"
Copy-Item target\boundwright.jar "$out\input\"
Copy-Item target\weights\*.tflite, target\weights\*.data, packaging\weights\NOTICE.txt "$out\input\weights\"
$modules = (Select-String -Path packaging\modules.txt -Pattern '^modules: (.*)').Matches[0].Groups[1].Value
Run "${tools}jlink" --add-modules $modules --strip-java-debug-attributes --no-header-files --no-man-pages --compress=2 --output "$out\runtime"
# with a window of its own, in which Ctrl-C closes it
Run "${tools}jpackage" --type app-image --win-console --name boundwright --app-version 1.0.0 --dest $out --input "$out\input" `
  --main-jar boundwright.jar --main-class boundwright.Boundwright --runtime-image "$out\runtime" `
  --java-options -XX:TieredStopAtLevel=1 --java-options -XX:+UseSerialGC --java-options -Djava.awt.headless=true `
  --java-options -Dfile.encoding=UTF-8 --java-options '-Dboundwright.home=$APPDIR' --java-options '-Dboundwright.native=$APPDIR\native' `
  --java-options -Xshare:auto --java-options -Xlog:cds=off --java-options -Xlog:cds+dynamic=off `
  --java-options '-XX:SharedArchiveFile=$APPDIR\boundwright.jsa' `
  --arguments serve --arguments --open
Remove-Item -Recurse -Force "$out\input", "$out\runtime"
Copy-Item LICENSE, NOTICE, packaging\READ-ME-FIRST.txt, target\classes\licences\sbom.json "$out\boundwright\"
.\boundwright.cmd licences | Out-File -Encoding utf8 "$out\boundwright\THIRD-PARTY.txt"
