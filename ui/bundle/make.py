"""Makes what can be started without Python: `python3 ui/bundle/make.py`.

On Linux an archive to unpack and install, on Windows one with an installer, on macOS an app; each
has to be made on its own system. Only the standard library is used before the set-up is done.
"""

import os
import platform
import shutil
import subprocess
import sys
import sysconfig
import tarfile
import tempfile
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
if __name__ == "__main__":
    sys.path[0] = str(ROOT)  # in place of ui/bundle/

from ui import start  # noqa: E402, I001  (first, for it turns old Pythons away)
from binder.errors import CanMend  # noqa: E402
from binder.resources import version  # noqa: E402
from ui.bundle.recipe import BUILT, ICONS  # noqa: E402
from ui.setup import system  # noqa: E402
from ui.setup.environment import Environment  # noqa: E402

MADE = ROOT / "dist"
SPEC = ROOT / "ui" / "bundle" / "ringbound.spec"
SYSTEMS = {"linux": "linux", "darwin": "macos", "win32": "windows"}
STRIPPED_FROM = 200_000
"""Bytes from which a library is looked through for what only a debugger reads."""


def main() -> int:
    """Set up, make the bundle, tell its sizes; an exit code, with a sentence on stderr for 2."""
    try:
        install_tools()
        place = start.set_up("requirements-bundle.lock")
        folder = bundle(place)
        prove(folder / "Contents" / "MacOS" if sys.platform == "darwin" else folder)
    except CanMend as sentence:
        return start.stop(str(sentence), 2)
    archive = pack(folder)
    print(f"Made {folder}: {megabytes(size(folder))}.")
    print(f"Made {archive}: {megabytes(size(archive))}.")
    return 0


def install_tools() -> None:
    """See that a Linux system has what it takes to look into libraries, and Python as one."""
    if sys.platform != "linux":
        return
    names = [] if shutil.which("objdump") else ["binutils"]
    shared = str(sysconfig.get_config_var("INSTSONAME"))
    folder = Path(str(sysconfig.get_config_var("LIBDIR")))
    if not (folder / shared).is_file():
        names.append(shared.partition(".so")[0])
    if names:
        system.install(names, "To make a bundle Ringbound needs", names)


def bundle(place: Environment) -> Path:
    """Have PyInstaller put the bundle together; the folder or the app it made. Raises CanMend."""
    shutil.rmtree(BUILT, ignore_errors=True)
    run(place, "ui.bundle.icons", str(ICONS))
    work = ["--workpath", str(BUILT / "work"), "--distpath", str(BUILT)]
    run(place, "PyInstaller", "--noconfirm", "--log-level", "WARN", *work, str(SPEC))
    if sys.platform == "darwin":
        app = BUILT / "Ringbound.app"
        run(place, "ui.bundle.licences", str(app / "Contents" / "Resources"))
        return app
    folder = BUILT / "Ringbound"
    shutil.copy(ROOT / "LICENSE", folder)
    run(place, "ui.bundle.licences", str(folder))
    if sys.platform == "linux":
        strip(folder)
    return folder


def run(place: Environment, module: str, *words: str) -> None:
    """Run a module in the environment; raises CanMend when it fails, after what it printed."""
    command = [str(place.python), "-P", "-m", module, *words]
    if subprocess.run(command, cwd=ROOT, env={**os.environ, "PYTHONPATH": str(ROOT)}).returncode:
        raise CanMend(f"The bundle could not be made, since `{module}` failed; see above.")


def strip(folder: Path) -> None:
    """Take out of libraries what only a debugger reads; Qt's have none of it."""
    files = [path for path in sorted(folder.rglob("*.so*")) if path.is_file()]
    for path in files:
        large = path.stat().st_size >= STRIPPED_FROM
        if large and not path.is_symlink() and "PySide6" not in path.parts:
            subprocess.run(["strip", "--strip-unneeded", str(path)], check=True)


def prove(folder: Path) -> None:
    """See that the program in a folder lays out a course, and draws and prints what is in it."""
    with tempfile.TemporaryDirectory() as made:
        shelf = str(Path(made) / "shelf")
        for words in (
            ["new", shelf],
            ["pictures", shelf, "--out", made],
            ["sheets", "--kind", "reading", "--out", str(Path(made) / "sheet.pdf")],
        ):
            surroundings = {**os.environ, "QT_QPA_PLATFORM": "offscreen"}
            command = [str(folder / "ringbound"), *words]
            if subprocess.run(command, env=surroundings, stdout=subprocess.DEVNULL).returncode:
                raise CanMend(f"The bundle was made and does not do `{words[0]}`; see above.")


def pack(folder: Path) -> Path:
    """One file to download, beside the folder's contents in `dist`."""
    MADE.mkdir(exist_ok=True)
    name = f"ringbound-{version()}-{SYSTEMS[sys.platform]}-{platform.machine().lower()}"
    if sys.platform == "win32":
        return Path(shutil.make_archive(str(MADE / name), "zip", folder.parent, folder.name))
    archive = MADE / f"{name}.tar.xz"
    with tarfile.open(archive, "w:xz") as packed:
        packed.add(folder, folder.name, filter=nobodys)
    return archive


def nobodys(entry: tarfile.TarInfo) -> tarfile.TarInfo:
    """An entry of the archive without the names of whoever made it."""
    entry.uid = entry.gid = 0
    entry.uname = entry.gname = ""
    return entry


def size(path: Path) -> int:
    """Bytes of a file, or of all files of a folder, links not counted."""
    files = [path] if path.is_file() else path.rglob("*")
    return sum(one.stat().st_size for one in files if one.is_file() and not one.is_symlink())


def megabytes(count: int) -> str:
    """Bytes as people say them."""
    return f"{count / 1_000_000:.0f} MB"


if __name__ == "__main__":
    sys.exit(main())
