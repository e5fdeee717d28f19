"""The table that the benches write: a Markdown file for reading, and its rows as JSON beside it."""

import json
import os
import platform
import statistics
from pathlib import Path

from measuring import QUIET

from binder.store.clock import Clock

HEAD = (
    "| measured | median | from | to | runs | aim | load | |\n|---|--:|--:|--:|--:|--:|--:|---|\n"
)
BUSY = 0.25
"""Load by others, for each processor, above which a ratio is written down and not judged."""


class Table:
    """Rows by bench and name; one that is measured again takes the place of the old."""

    def __init__(self, path: Path) -> None:
        self.path = path
        self.kept = path.with_suffix(".json")
        self.rows: dict[str, dict[str, dict]] = {}
        self._fresh: set[str] = set()
        self._whole: set[str] = set()
        if self.kept.exists():
            self.rows = json.loads(self.kept.read_text("utf-8"))

    def put(self, bench: str, row: dict) -> str:
        """Keep what a bench said; returns the line to show for it."""
        if row.get("ended"):
            self._whole.add(bench)
            return ""
        if bench not in self._fresh:
            self.rows[bench] = {}
            self._fresh.add(bench)
        moment = Clock().now().isoformat(" ", "minutes")
        self.rows[bench][row["what"]] = row | {"machine": machine(), "at": moment}
        self.kept.write_text(json.dumps(self.rows, indent=1), "utf-8")
        self.path.write_text(self.words(), "utf-8")
        return line(row)

    def ended(self, bench: str) -> bool:
        """Whether the bench said that it measured all it has."""
        return bench in self._whole

    def words(self) -> str:
        """The whole table, a section for each machine it was measured on."""
        parts = []
        for name in sorted({row["machine"] for _, row in self._each()}):
            rows = [row for _, row in self._each() if row["machine"] == name]
            days = sorted(row["at"] for row in rows)
            parts.append(
                f"# {name}\n\n{days[0]} to {days[-1]}\n\n{HEAD}" + "".join(map(cells, rows))
            )
        return "\n".join(parts)

    def _each(self):
        return [(bench, row) for bench in sorted(self.rows) for row in self.rows[bench].values()]


def machine() -> str:
    """The machine, as the table names it."""
    system = f"{platform.system()} {platform.machine()}"
    python = f"Python {platform.python_version()}"
    return f"{platform.node()}, {os.cpu_count()} processors, {system}, {python}"


def verdict(row: dict) -> str:
    """Whether a row keeps to its bound, as far as that can be said."""
    if row["share"] < QUIET or row["load"] > BUSY:
        return "busy machine, not judged"
    if row["bound"] is None:
        return ""
    met = statistics.median(row["ratios"]) <= row["bound"]
    return ("met" if met else "NOT MET") + (" (absolute)" if row["absolute"] else "")


def figures(row: dict) -> list[str]:
    """Median, least, largest, how many, aim, load."""
    ratios = row["ratios"]
    bound = "" if row["bound"] is None else f"{row['bound']:g}"
    told = [statistics.median(ratios), min(ratios), max(ratios)]
    return [*(f"{one:.2f}" for one in told), str(len(ratios)), bound, f"{row['load']:.2f}"]


def cells(row: dict) -> str:
    """One row in Markdown."""
    kind = "*" if row["absolute"] else ""
    return f"| {kind}{row['what']}{kind} | {' | '.join(figures(row))} | {verdict(row)} |\n"


def line(row: dict) -> str:
    """One row for the terminal."""
    middle, least, most, runs, bound, _load = figures(row)
    return (
        f"{row['what'][:72]:72} {middle:>8} ({least} to {most}, {runs}) {bound:>5} {verdict(row)}"
    )
