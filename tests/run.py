"""Set Ringbound up with its test tools and check everything: `python3 tests/run.py`.

Options and paths go to pytest, as in `python3 tests/run.py tests/cards`. Exit code 0 only if
style, types, layers and tests are all well. Nothing need be installed beforehand.
"""

import os
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path[0] = str(ROOT)  # in place of tests/

from ui import start  # noqa: E402, I001  (first, for it turns old Pythons away)
from binder.errors import CanMend  # noqa: E402
from ui.setup.environment import Environment  # noqa: E402

CHECKS = {
    "style": ("ruff", "check"),
    "layout of the code": ("ruff", "format", "--check"),
    "types": ("mypy",),
    "layers": ("lint-imports", "--no-logo"),
}
"""What is checked before the tests: a name to print, and a command of the environment."""


def main(options: list[str]) -> int:
    """Set up, check, test; exit code 2 if the set-up fails, else pytest's, else 1 for a check."""
    try:
        place = start.set_up("requirements-test.lock")
    except CanMend as sentence:
        return start.stop(str(sentence), 2)
    failed = [name for name in CHECKS if not passes(place, name)]
    os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")
    tests = subprocess.run([place.python, "-m", "pytest", *options], cwd=ROOT).returncode
    if failed:
        print(f"Not well: {', '.join(failed)} (see above).", file=sys.stderr)
    return tests or int(bool(failed))


def passes(place: Environment, name: str) -> bool:
    """Run one check; print how it went, and what it says only if it fails."""
    command, *words = CHECKS[name]
    done = subprocess.run(
        [place.script(command), *words], cwd=ROOT, capture_output=True, encoding="utf-8"
    )
    print(f"{name}: {'not well' if done.returncode else 'well'}", flush=True)
    if done.returncode:
        print(done.stdout + done.stderr, flush=True)
    return done.returncode == 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
