"""Measures, and writes the table: `python tests/bench/run.py [NAME ...] [--small] [--out FILE]`.

Each row is measured against a bare library call or a common tool on the same data in the same run.
Every bench runs in a process of its own, which is ended with what it started. What was measured
is kept in FILE (by default in the system's temporary folder) with the machine and its load, row by
row, so that the table can be measured in parts: a row measured again takes the old one's place.
On a machine that is busy with other things the ratios are written down and not judged.

The generated shelf of twenty years is kept in the temporary folder between runs; `--small` uses one
of 2,000 leaves, to see that the benches work.
"""

import argparse
import importlib
import json
import os
import platform
import signal
import subprocess
import sys
import tempfile
from contextlib import suppress
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent.parent), str(HERE)]

import big_shelf  # noqa: E402
import measuring  # noqa: E402
import table  # noqa: E402

LARGE, SMALL = (100_000, 20_000), (2_000, 400)


def shelf(small: bool) -> Path:
    """The generated shelf, made at the first run."""
    leaves, readings = SMALL if small else LARGE
    folder = Path(tempfile.gettempdir()) / f"ringbound-bench-{leaves}"
    return big_shelf.make(folder, leaves, readings)


def benches() -> list[str]:
    """The names of all."""
    return sorted(path.stem.removeprefix("bench_") for path in HERE.glob("bench_*.py"))


def asked(words: list[str]) -> argparse.Namespace:
    """What the command line says."""
    takes = argparse.ArgumentParser(description=__doc__.split("\n\n")[0])
    takes.add_argument("names", nargs="*", metavar="NAME", help=", ".join(benches()))
    takes.add_argument("--small", action="store_true", help="a shelf of 2,000 leaves")
    takes.add_argument("--out", type=Path, help="where the table is kept", default=None)
    takes.add_argument("--child", action="store_true", help=argparse.SUPPRESS)
    told = takes.parse_args(words)
    for name in told.names:
        if name not in benches():
            takes.error(f"There is no bench {name!r}; there are {', '.join(benches())}.")
    return told


def main(words: list[str]) -> int:
    """Run the benches named, or all; 1 if one of them failed."""
    told = asked(words)
    if told.child:
        return child(told.names[0], told.small)
    made = table.Table(told.out or default(told.small))
    shelf(told.small)
    failed = [name for name in told.names or benches() if not measured(name, told.small, made)]
    print(f"\nKept in {made.path}")
    if failed:
        print(f"These failed: {', '.join(failed)}.")
    return 1 if failed else 0


def default(small: bool) -> Path:
    """Where the table of this machine is kept."""
    size = "-small" if small else ""
    return Path(tempfile.gettempdir()) / f"ringbound-bench-{platform.node()}{size}.md"


def measured(name: str, small: bool, made: "table.Table") -> bool:
    """Run one bench in a process of its own, and write down its rows as they come."""
    command = [sys.executable, str(HERE / "run.py"), "--child", name, *["--small"] * small]
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, text=True, start_new_session=True
    ) as running:
        try:
            for line in running.stdout or ():
                print(made.put(name, json.loads(line)), flush=True)
            running.wait()
        finally:
            with suppress(ProcessLookupError, AttributeError):
                os.killpg(running.pid, signal.SIGKILL)
    return running.returncode == 0 and made.ended(name)


def child(name: str, small: bool) -> int:
    """Measure, and say each row as a line of JSON; a last one says that all were measured."""
    out, sys.stdout = sys.stdout, sys.stderr
    for row in importlib.import_module(f"bench_{name}").rows(shelf(small)):
        print(json.dumps(said(row)), file=out, flush=True)
    print(json.dumps({"ended": True}), file=out, flush=True)
    return 0


def said(row: measuring.Row) -> dict:
    """A row with how busy the machine was."""
    return {
        "what": row.what, "ratios": row.ratios, "bound": row.bound, "absolute": row.absolute,
        "load": measuring.others(), "share": measuring.share(),
    }  # fmt: skip


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
