"""Pages counted from a log of twenty years, until they are painted: its contents leaf, the year
sheet, what came of it, each opened for the first time since the program was started.

Against its own SQL run bare, with as many reads of the same rows as the window needs; against 100
milliseconds; and against a tenth of the log, to see that none grows faster than the log does.
Each opening runs in a process of its own, and the quickest of several counts.
`python bench_pages.py SHELF PAGE` prints the seconds of one.
"""

import os
import subprocess
import sys
import tempfile
import time
from datetime import date
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent.parent), str(HERE)]
os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

import big_shelf  # noqa: E402

TODAY, YEAR = date(2026, 11, 25), "2020"
TENTH, TURNS = (10_000, 2_000), 7
BARE = {
    "contents": "contents leaf of the log", "year": "year sheet", "came": "what came of it",
}  # fmt: skip
"""Each page with the name of its statements in bench_log."""
SHOWN = 0.1
"""Seconds."""


def rows(folder):
    """Three rows for each page."""
    import bench_log
    from measuring import Row, against, ratios, turns

    from binder.store.shelf import Shelf

    tenth = Path(tempfile.gettempdir()) / f"ringbound-bench-{TENTH[0]}"
    big_shelf.make(tenth, *TENTH)
    shelf = Shelf(folder)
    bare = turns(bench_log.bares(shelf), TURNS)
    more = bench_log.counted(shelf) / TENTH[1]
    shelf.close()
    for page, name in BARE.items():
        taken = opened({"whole": folder, "tenth": tenth}, page)
        seconds = taken["whole"]
        if more > 2:
            yield Row(
                f"{name} painted, {more:.0f} times the log", ratios(seconds, taken["tenth"]), 1.3
            )
        yield Row(f"{name} painted / its SQL run bare", ratios(seconds, bare[name]))
        yield against(f"{name} painted at first / 100 ms", seconds, SHOWN, 1)


def opened(folders, page):
    """Seconds of several first openings of each folder, by turns."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    with tempfile.TemporaryDirectory() as compiled:
        # As after the first start on anybody's computer: modules lie there compiled.
        env = kept | {"PYTHONPYCACHEPREFIX": compiled}
        taken = {name: [] for name in folders}
        for turn in range(TURNS + 1):
            for name, folder in folders.items():
                ran = [sys.executable, __file__, str(folder), page]
                done = subprocess.run(ran, capture_output=True, text=True, check=True, env=env)
                taken[name] += [float(done.stdout.split()[-1])] * (turn > 0)
    return taken


def once(folder, page):
    """Seconds from asking for a page until both leaves are painted, for the first time."""
    from bench_turn import Painted, settle
    from PySide6.QtWidgets import QApplication

    from binder.store.clock import OtherDay
    from binder.study.leaves import tabs
    from ui.app import Program
    from ui.session.memory import Memory

    app = QApplication(["bench"])
    with tempfile.TemporaryDirectory() as place:
        window = Program(app, Memory(Path(place) / "desk.ini"), OtherDay(TODAY)).open(folder)
        window.resize(1600, 1000)
        binder = window.session.shelf.binders[-1]
        log = tabs.first_of_kind(binder, "readings")
        rest(settle)
        start = time.perf_counter()
        if page == "contents":
            window.session.open_tab(binder, log)
        else:
            window.actions_by_name[{"year": "year_sheet", "came": "came"}[page]].trigger()
        sides = [window.cover.leaf(side) for side in ("left", "right")]
        painted = Painted([side.viewport() for side in sides if side is not None])
        while painted.waiting and time.perf_counter() - start < 5:
            QApplication.processEvents()
        taken = time.perf_counter() - start
        window.close()
    if painted.waiting:
        raise SystemExit(f"The {page} page was not painted.")
    return taken


def rest(settle):
    """Let the window do all that it does once it is shown, as while its owner looks at it."""
    until = time.perf_counter() + 1.5
    while time.perf_counter() < until:
        settle()
        time.sleep(0.02)


if __name__ == "__main__":
    print(once(Path(sys.argv[1]), sys.argv[2]))
