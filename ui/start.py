"""Set Ringbound up on this machine and open it: `python3 ui/start.py [SHELF]`.

Only the standard library is used before the set-up is done; a second run finds it done.
"""

import os
import re
import socket
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
if __name__ == "__main__":
    sys.path[0] = str(ROOT)  # in place of ui/, whose files are not to be imported by bare name


def too_old(major: int, minor: int) -> str:
    """What to tell somebody whose Python cannot run Ringbound; nothing if it can."""
    if (major, minor) >= (3, 11):
        return ""
    return (
        f"Ringbound needs Python 3.11 or newer and this is Python {major}.{minor}; "
        "install a newer one and give the same command with it, beginning `python3.11`."
    )


if too_old(*sys.version_info[:2]):  # before anything is read that an old Python cannot read
    print(too_old(*sys.version_info[:2]), file=sys.stderr)
    sys.exit(2)

from binder.errors import CanMend  # noqa: E402
from ui.setup import environment, system  # noqa: E402


def main(arguments: list[str]) -> int:
    """Set up, then open the program with `arguments`; exit code 2 after a sentence on stderr."""
    try:
        place = set_up("requirements.lock")
        need_display(place)
    except CanMend as sentence:
        return stop(str(sentence), 2)
    return run([str(place.python), "-P", "-m", "ui.app", *arguments])


def set_up(lock: str) -> environment.Environment:
    """Bring this machine to where everything in a lock file of the checkout runs."""
    place = environment.find(ROOT)
    if not place.ready(ROOT / lock):
        print(f"Setting Ringbound up in {place.folder}; this takes a minute or two.", flush=True)
        place.prepare(ROOT / lock)
    system.install_missing_libraries(place.python)
    return place


def need_display(place: environment.Environment) -> None:
    """Raise CanMend if no window can open here."""
    if not has_display(os.environ):
        raise CanMend(
            "There is no display here, so Ringbound cannot open a window; "
            "`ringbound find`, `log`, `print`, `check` and `pictures` work without one, "
            f"as in `{place.command} check SHELF`."
        )


def has_display(surroundings: Mapping[str, str]) -> bool:
    """Whether a window can open, from environment variables; macOS and Windows always say yes."""
    if sys.platform in ("win32", "darwin") or surroundings.get("QT_QPA_PLATFORM"):
        return True
    wayland = surroundings.get("WAYLAND_DISPLAY")
    if wayland and Path(surroundings.get("XDG_RUNTIME_DIR", "/"), wayland).exists():
        return True
    return x_answers(surroundings.get("DISPLAY", ""))


def x_answers(display: str) -> bool:
    """Whether an X display such as `:0` answers; one on another machine is believed."""
    local = re.match(r"(?:unix)?:(\d+)", display)
    if not local:
        return bool(display)
    path = f"/tmp/.X11-unix/X{local[1]}"
    return any(listens(name) for name in (path, "\0" + path))


def listens(name: str) -> bool:
    """Whether something listens on a local socket."""
    if sys.platform == "win32":
        return False
    with socket.socket(socket.AF_UNIX) as line:
        return line.connect_ex(name) == 0


def run(command: list[str]) -> int:
    """Become `command` where the system can; elsewhere run it and give its exit code."""
    sys.stdout.flush()
    if sys.platform != "win32":
        os.execv(command[0], command)
    return subprocess.run(command).returncode


def stop(sentence: str, code: int) -> int:
    """Say a sentence on stderr and give the exit code."""
    print(sentence, file=sys.stderr)
    return code


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
