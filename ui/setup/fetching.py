"""Packages from a lock file into an environment, and what to do when they will not come."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

from binder.errors import CanMend

REASONS = (
    (
        r"No space left on device|not enough space on the disk",
        "The disk is full: make about 800 MB of room, then run the same command again.",
    ),
    (
        r"DO NOT MATCH THE HASHES",
        "A package came over the network damaged or changed, so it was not installed; "
        "run the same command again, perhaps on another network.",
    ),
    (
        r"NewConnectionError|NameResolution|Failed to establish|Max retries|timed out|ProxyError|"
        r"Connection (aborted|reset|refused)|SSLError|IncompleteRead|\d (Client|Server) Error",
        "The packages Ringbound needs could not be fetched; see that this computer reaches the "
        "internet, then run the same command again.",
    ),
    (
        r"No matching distribution found|Could not find a version",
        "Some packages Ringbound needs are not made for this system or this Python; "
        "a 64-bit system of the last few years and Python 3.11 to 3.14 will do.",
    ),
)
"""Words in pip's report, and the sentence for each; the first that fits is told."""


def install(python: Path, lock: Path, log: Path) -> None:
    """Fetch and install `lock` with the pip of `python`, telling each package; report in `log`.

    Raises CanMend. Every package must have the hash the lock file names, and none is built here.
    """
    command = [python, "-m", "pip", "install", "--require-hashes", "--no-deps", "--no-input"]
    command += ["--only-binary", ":all:", "--retries", "2", "--disable-pip-version-check"]
    lines = []
    with subprocess.Popen(
        [*map(str, command), "-r", str(lock)],
        stdout=subprocess.PIPE,
        stderr=subprocess.STDOUT,
        encoding="utf-8",
        errors="replace",
    ) as pip:
        for line in pip.stdout or ():
            lines.append(line)
            tell(line)
    log.write_text("".join(lines), encoding="utf-8")
    if pip.returncode:
        raise CanMend(reason("".join(lines), log))


def tell(line: str) -> None:
    """Print what a line of pip's report means to somebody waiting, if it does."""
    if found := re.match(r"Collecting ([\w.-]+)==([\w.]+)", line):
        print(f"  fetching {found[1]} {found[2]}", flush=True)
    elif line.startswith("Installing collected packages"):
        print("  installing them", flush=True)


def reason(report: str, log: Path) -> str:
    """One sentence for a failed run of pip."""
    for words, sentence in REASONS:
        if re.search(words, report):
            return sentence
    return f"The packages Ringbound needs could not be installed; what pip reported is in {log}."
