"""Prints the table of ratios: `python tests/bench/run.py [NAME ...] [--small]`.

Each row is measured against a bare library call or a common tool on the same data in the same run.
The generated shelf of twenty years is kept in the system's temporary folder between runs;
`--small` uses one of 2,000 leaves, to see that the benches work.
"""

import importlib
import sys
import tempfile
from pathlib import Path

HERE = Path(__file__).resolve().parent
sys.path[:0] = [str(HERE.parent.parent), str(HERE)]

import big_shelf  # noqa: E402

LARGE, SMALL = (100_000, 20_000), (2_000, 400)


def shelf(small: bool) -> Path:
    """The generated shelf, made at the first run."""
    leaves, readings = SMALL if small else LARGE
    folder = Path(tempfile.gettempdir()) / f"ringbound-bench-{leaves}"
    return big_shelf.make(folder, leaves, readings)


def main(words: list[str]) -> int:
    """Run the benches named, or all, and print their rows."""
    small = "--small" in words
    names = [word for word in words if not word.startswith("-")] or sorted(
        path.stem.removeprefix("bench_") for path in HERE.glob("bench_*.py")
    )
    folder = shelf(small)
    print(f"{'measured':58} {'ratio':>8}  {'bound':>8}")
    for name in names:
        for what, ratio, bound in importlib.import_module(f"bench_{name}").rows(folder):
            print(f"{what:58} {ratio:8.2f}  {bound:>8}", flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
