"""System libraries: which of them Qt misses on this machine, and fetching them on Debian's kin."""

from __future__ import annotations

import importlib.util
import os
import re
import shutil
import subprocess
import sys
from collections.abc import Iterable
from pathlib import Path

from binder.errors import CanMend

PARTS = (
    "lib/libQt6Widgets.so.6",
    "lib/libQt6Svg.so.6",
    "lib/libQt6PrintSupport.so.6",
    "lib/libQt6Network.so.6",
    "plugins/platforms/libqoffscreen.so",
    "plugins/platforms/libqwayland.so",
    "plugins/platforms/libqxcb.so",
)
"""The parts of Qt, in PySide6's folder Qt, that reach for libraries of the system."""

IRREGULAR = {
    "libbrotlicommon.so.1": "libbrotli1",
    "libbrotlidec.so.1": "libbrotli1",
    "libglib-2.0.so.0": "libglib2.0-0",
    "libgthread-2.0.so.0": "libglib2.0-0",
    "libz.so.1": "zlib1g",
}
"""Libraries whose Debian package is not named by the rule."""

WAIT = ("-o", "DPkg::Lock::Timeout=300")
"""Seconds to wait for whoever else is installing just now."""


def install_missing_libraries(python: Path) -> None:
    """See that Qt finds its system libraries, installing them where we can; raises CanMend."""
    if sys.platform != "linux":
        return
    lost = missing(python.parent.parent)
    if lost:
        install(
            sorted({package(name) for name in lost}), "Qt, which draws the windows, needs", lost
        )


def install_missing_parts_of_python() -> None:
    """See that Python can make an environment: Debian keeps that part in a package of its own."""
    if importlib.util.find_spec("ensurepip") and importlib.util.find_spec("venv"):
        return
    name = f"python{sys.version_info.major}.{sys.version_info.minor}-venv"
    install([name], "To make its own folder Ringbound needs", ["venv"])


def missing(environment: Path) -> list[str]:
    """File names of the system libraries that PySide6 in `environment` does not find, sorted."""
    return missing_for(environment.glob("lib/python*/site-packages/PySide6/Qt"))


def missing_for(folders: Iterable[Path]) -> list[str]:
    """The same for PySide6's folder Qt, or for several."""
    parts = [str(path) for folder in folders for part in PARTS if (path := folder / part).exists()]
    if not parts or not shutil.which("ldd"):
        return []
    plain = {**os.environ, "LC_ALL": "C"}
    report = subprocess.run(["ldd", *parts], capture_output=True, text=True, env=plain).stdout
    return lost_in(report)


def lost_in(report: str) -> list[str]:
    """The libraries that a report of ldd says were not found, sorted."""
    return sorted(set(re.findall(r"^\s*(\S+) => not found", report, re.MULTILINE)))


def package(library: str) -> str:
    """The Debian package of a library's file name (rule: Debian Policy 8.1)."""
    if library in IRREGULAR:
        return IRREGULAR[library]
    name, _, version = library.partition(".so.")
    dash = "-" * name[-1].isdigit()
    return f"{name}{dash}{version}".lower().replace("_", "-")


def install(packages: list[str], need: str, lost: list[str]) -> None:
    """Install Debian packages, with the user's leave; raises CanMend when that cannot be done."""
    names = " ".join(packages)
    if not shutil.which("apt-get"):
        raise CanMend(
            f"{need} parts of the system that are not there: {', '.join(lost)}; "
            "install them with your system's package manager, then run the same command again."
        )
    told = f"{need} packages of the system that are not there"
    rights = administrator()
    if rights is not None:
        print(f"{told}: {names}.", flush=True)
    if rights is None or not (rights == [] or agreed()):
        raise CanMend(f"{told}; run `sudo apt-get install {names}`, then the same command again.")
    if not apt(rights, packages):
        raise CanMend(
            "The packages of the system could not be installed; see that this computer reaches "
            "the internet, then run the same command again."
        )


def administrator() -> list[str] | None:
    """What goes before an administrator's command: nothing, sudo, or None if there is no way."""
    if sys.platform == "win32":
        return None
    if os.geteuid() == 0:
        return []
    return ["sudo"] if shutil.which("sudo") and sys.stdin.isatty() else None


def agreed() -> bool:
    """Ask the user for leave to use sudo."""
    return input("Install them with sudo now? [Y/n] ").strip().lower() in ("", "y", "yes")


def apt(rights: list[str], packages: list[str]) -> bool:
    """Run apt-get, passing on what it says only if it fails; whether the packages are in."""
    print("  installing them with apt-get", flush=True)
    quietly = [*rights, "env", "DEBIAN_FRONTEND=noninteractive"]
    for words in (
        ["dpkg", "--configure", "-a"],  # ends what a broken-off run left half done
        ["apt-get", "update", "-qq"],
        ["apt-get", "install", "-qq", "-y", "--no-install-recommends", *WAIT, *packages],
    ):
        done = subprocess.run([*quietly, *words], stderr=subprocess.PIPE, stdout=subprocess.DEVNULL)
    if done.returncode:
        sys.stderr.buffer.write(done.stderr)
    return done.returncode == 0
