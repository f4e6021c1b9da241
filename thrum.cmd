@echo off
rem Thrum's command line for Windows: thrum help
node "%~dp0tools\boot.mjs" packages\cli\src\thrum.ts %*
exit /b %ERRORLEVEL%
