"""Start to the first painted leaf, and memory, as whole processes against a bare window."""

import os
import resource
import subprocess
import sys
import tempfile
from pathlib import Path

import big_shelf
from measuring import Row, ratios

ROOT = Path(__file__).resolve().parent.parent.parent
RUNS = 9

PEAK = """
import os, resource, sys
def peak():
    # What Linux says of the process before it became ours counts in ru_maxrss, not in VmHWM.
    try:
        lines = open("/proc/self/status").read().splitlines()
        size = next(int(line.split()[1]) for line in lines if line.startswith("VmHWM"))
    except OSError:
        size = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    print(size, flush=True)
    os._exit(0)
"""

BARE = """
from PySide6.QtWidgets import QApplication, QWidget
app = QApplication([])
window = QWidget()
window.resize(1600, 1000)
window.show()
app.processEvents()
peak()
"""

OURS = """
from ui.app import main
main(sys.argv[1:], peak)
"""


def surroundings(place: Path) -> dict[str, str]:
    """Ours, without a display, with a memory of its own, and with compiled modules kept."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    return kept | {"QT_QPA_PLATFORM": "offscreen", "XDG_CONFIG_HOME": str(place)}


def timed(place: Path, program: str, *arguments: str) -> tuple[float, int]:
    """Processor seconds of one whole process, and its largest memory in KiB.

    Processor time, since the wall clock of a shared machine measures its neighbours.
    """
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    done = subprocess.run(
        [sys.executable, "-c", PEAK + program, *arguments],
        cwd=ROOT, env=surroundings(place),
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    spent = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    return spent, int(done.stdout.split()[-1])


def rows(folder):
    """Three rows: start, growth with the shelf, memory."""
    small = big_shelf.make(Path(tempfile.gettempdir()) / "ringbound-bench-100", 100, 20)
    with tempfile.TemporaryDirectory() as name:
        place = Path(name)
        taken = {"bare": [], "small": [], "large": []}
        timed(place, OURS, str(small))  # compiles what was never compiled
        for _ in range(RUNS):
            taken["bare"].append(timed(place, BARE))
            taken["small"].append(timed(place, OURS, str(small)))
            taken["large"].append(timed(place, OURS, str(folder)))
    seconds = {name: [t for t, _ in each] for name, each in taken.items()}
    size = {name: [m for _, m in each] for name, each in taken.items()}
    yield Row(
        "start to first painted leaf / bare window", ratios(seconds["large"], seconds["bare"]), 2
    )
    yield Row(
        "opening 100,000 leaves / opening 100", ratios(seconds["large"], seconds["small"]), 1.1
    )
    yield Row(
        "memory with the large shelf open / bare window", ratios(size["large"], size["bare"]), 1.6
    )
