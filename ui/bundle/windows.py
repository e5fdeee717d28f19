"""The program among those of Windows: its type of file, its shortcut, its line under installed
apps. All of it lies in the part of the registry that is the user's own.
"""

from __future__ import annotations

import contextlib
import subprocess
import sys
from pathlib import Path, PureWindowsPath

from binder.resources import version
from binder.store.schema import SUFFIX

KIND = "Ringbound.Binder"
CLASSES = "Software\\Classes"
LISTED = "Software\\Microsoft\\Windows\\CurrentVersion\\Uninstall\\Ringbound"


def keys(program: PureWindowsPath, told_version: str) -> dict[str, dict[str, str]]:
    """Keys under HKEY_CURRENT_USER, and the values in each; a value of no name is the key's own."""
    window, uninstall = program / "ringbound-window.exe", program / "uninstall.exe"
    return {
        f"{CLASSES}\\{SUFFIX}": {"": KIND},
        f"{CLASSES}\\{SUFFIX}\\OpenWithProgids": {KIND: ""},
        f"{CLASSES}\\{KIND}": {"": "Ringbound binder"},
        f"{CLASSES}\\{KIND}\\DefaultIcon": {"": f'"{window}",0'},
        f"{CLASSES}\\{KIND}\\shell": {},
        f"{CLASSES}\\{KIND}\\shell\\open": {},
        f"{CLASSES}\\{KIND}\\shell\\open\\command": {"": f'"{window}" "%1"'},
        LISTED: {
            "DisplayName": "Ringbound",
            "DisplayVersion": told_version,
            "DisplayIcon": f'"{window}",0',
            "InstallLocation": str(program),
            "UninstallString": f'"{uninstall}"',
        },
    }


def shortcut(program: PureWindowsPath) -> str:
    """Words for PowerShell that put the program in the start menu."""
    window = str(program / "ringbound-window.exe").replace("'", "''")
    return (
        "$menu = [Environment]::GetFolderPath('Programs'); "
        "$made = (New-Object -ComObject WScript.Shell).CreateShortcut("
        "(Join-Path $menu 'Ringbound.lnk')); "
        f"$made.TargetPath = '{window}'; $made.Save()"
    )


NO_SHORTCUT = (
    "Remove-Item -ErrorAction Ignore "
    "(Join-Path ([Environment]::GetFolderPath('Programs')) 'Ringbound.lnk')"
)


def put(program: Path) -> None:
    """Make the program in a folder known."""
    if sys.platform == "win32":
        import winreg

        for key, values in keys(PureWindowsPath(program), version()).items():
            with winreg.CreateKey(winreg.HKEY_CURRENT_USER, key) as opened:
                for name, value in values.items():
                    winreg.SetValueEx(opened, name, 0, winreg.REG_SZ, value)
        _shell(shortcut(PureWindowsPath(program)))


def take_away(program: Path) -> None:
    """Have Windows forget the program."""
    if sys.platform == "win32":
        import winreg

        for key in reversed(keys(PureWindowsPath(program), "")):
            with contextlib.suppress(FileNotFoundError):
                winreg.DeleteKey(winreg.HKEY_CURRENT_USER, key)
        _shell(NO_SHORTCUT)


def remove_when_ended(program: Path) -> None:
    """Remove the program's folder in a few seconds, when what runs from it has ended."""
    subprocess.Popen(["cmd", "/c", f'ping -n 4 127.0.0.1 >nul & rmdir /s /q "{program}"'])


def _shell(words: str) -> None:
    subprocess.run(["powershell", "-NoProfile", "-Command", words], check=True)
