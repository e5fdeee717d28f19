"""Start to the first painted leaf, and memory, as whole processes against a bare window."""

import os
import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

import big_shelf

ROOT = Path(__file__).resolve().parent.parent.parent
RUNS = 7

BARE = """
import resource, sys, time
from PySide6.QtWidgets import QApplication, QWidget
app = QApplication([])
window = QWidget()
window.resize(1600, 1000)
window.show()
app.processEvents()
print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)
"""

OURS = """
import resource, sys
from pathlib import Path
from PySide6.QtWidgets import QApplication
from ui.app import Program
from ui.memory import Memory
app = QApplication([])
program = Program(app, Memory(Path(sys.argv[2])))
window = program.open(Path(sys.argv[1]))
window.resize(1600, 1000)
app.processEvents()
print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss)
window.session.shelf.close()
import os; sys.stdout.flush(); os._exit(0)
"""


def surroundings() -> dict[str, str]:
    """Ours, without a display, and with compiled modules kept as they usually are."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    return kept | {"QT_QPA_PLATFORM": "offscreen"}


def timed(program: str, *arguments: str) -> tuple[float, int]:
    """Processor seconds of one whole process, and its largest memory in KiB.

    Processor time, since the wall clock of a shared machine measures its neighbours.
    """
    before = os.times()
    done = subprocess.run(
        [sys.executable, "-c", program, *arguments],
        cwd=ROOT, env=surroundings(),
        capture_output=True, text=True, check=True,
    )  # fmt: skip
    after = os.times()
    spent = after.children_user + after.children_system
    return spent - before.children_user - before.children_system, int(done.stdout.split()[-1])


def rows(folder):
    """Three rows: start, growth with the shelf, memory."""
    small = big_shelf.make(Path(tempfile.gettempdir()) / "ringbound-bench-100", 100, 20)
    with tempfile.TemporaryDirectory() as place:
        memory = str(Path(place) / "desk.ini")
        taken = {"bare": [], "small": [], "large": []}
        timed(OURS, str(small), memory)  # compiles what was never compiled
        for _ in range(RUNS):
            taken["bare"].append(timed(BARE))
            taken["small"].append(timed(OURS, str(small), memory))
            taken["large"].append(timed(OURS, str(folder), memory))
    seconds = {name: statistics.median(t for t, _ in each) for name, each in taken.items()}
    size = {name: statistics.median(m for _, m in each) for name, each in taken.items()}
    yield "start to first painted leaf / bare window", seconds["large"] / seconds["bare"], "3.0"
    yield "opening 100,000 leaves / opening 100", seconds["large"] / seconds["small"], "1.3"
    yield "memory with the large shelf open / bare window", size["large"] / size["bare"], "2.5"
