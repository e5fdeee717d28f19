"""Manners of the tests: they do not sleep, take the time, or touch private names. Benches may."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

HERE = Path(__file__).parent
SLEEPS = {"sleep", "qWait", "qSleep", "msleep", "usleep"}
CLOCKS = {"perf_counter", "monotonic", "process_time", "thread_time", "timeit", "QElapsedTimer"}
CLOCKS |= {f"{name}_ns" for name in CLOCKS}
UNDERLINED = {"_meta", "_fields", "_replace", "_asdict"}
"""Names that libraries have for everybody, underlined so that they stand apart from one's own."""
REACHES = {"getattr", "setattr", "delattr"}
PROGRAM = re.compile(rf"\b(?:{'|'.join(sorted(SLEEPS | CLOCKS))})\(")
"""Within a program that a test hands to another process."""


def faults(source: str) -> Iterator[str]:
    """What is wrong with a test's source, each with its line."""
    for node in ast.walk(ast.parse(source)):
        for words in said(node):
            yield f"{getattr(node, 'lineno', 0)}: {words}"


def said(node: ast.AST) -> Iterator[str]:
    """What is wrong with one node, without what stands below it."""
    match node:
        case ast.Call(func=ast.Attribute(ast.Name("qtbot"), "wait")):
            yield "qtbot.wait sleeps; wait for what is to come"
        case ast.Call(func=ast.Name(name) | ast.Attribute(attr=name), args=args) if (
            name in REACHES and reached(args)
        ):
            yield f"{reached(args)} is private"
        case ast.Attribute(ast.Name("self" | "cls"), name) if private(name):
            return
        case ast.Attribute(attr=name) | ast.Name(name) | ast.alias(name) if name in SLEEPS:
            yield f"{name} sleeps; wait for what is to come"
        case ast.Attribute(attr=name) | ast.Name(name) | ast.alias(name) if name in CLOCKS:
            yield f"{name} takes the time; that belongs in tests/bench"
        case ast.Attribute(attr=name) | ast.alias(name) if private(name):
            yield f"{name} is private; do what a user does"
        case ast.Constant(str(words)) if PROGRAM.search(words):
            yield "a program that sleeps or takes the time"


def private(name: str) -> bool:
    """Whether a name is somebody's own."""
    return name.startswith("_") and not name.startswith("__") and name not in UNDERLINED


def reached(args: list[ast.expr]) -> str:
    """A private name that a call like setattr is given in words; '' for none."""
    words = [one.value for one in args[:2] if isinstance(one, ast.Constant)]
    parts = [part for word in words if isinstance(word, str) for part in word.split(".")]
    return next((part for part in parts if private(part)), "")


def test_all_tests_have_manners() -> None:
    found = [
        f"{path.relative_to(HERE)}:{fault}"
        for path in sorted(HERE.rglob("*.py"))
        if not {"bench", "mutation"} & {*path.relative_to(HERE).parts} and path != Path(__file__)
        for fault in faults(path.read_text(encoding="utf-8"))
    ]
    assert found == []


@pytest.mark.parametrize(
    "line",
    [
        "import time; time.sleep(1)",
        "from time import sleep",
        "QTest.qWait(20)",
        "qtbot.wait(50)",
        "QThread.msleep(5)",
        "from time import perf_counter",
        "began = time.monotonic()",
        "timer = QElapsedTimer()",
        "PROGRAM = 'import time\\nwhile True:\\n    time.sleep(1)'",
        "assert window._slips == []",
        "window.bar._find.click()",
        "from ui.app import _catch",
        "monkeypatch.setattr(cover, '_paint', print)",
        "monkeypatch.setattr('ui.app._catch', print)",
        "getattr(page, '_menu')()",
    ],
)
def test_bad_manners_are_noticed(line: str) -> None:
    assert len(list(faults(line))) == 1


@pytest.mark.parametrize(
    "line",
    [
        "qtbot.waitUntil(lambda: page.isVisible())",
        "job.wait()",
        "class Made:\n    def __init__(self):\n        self._own = 1",
        "Leaf._meta.columns",
        "os.utime(path, (time.time(), 0))",
        "for _, name in pairs: print(name.__class__)",
        "monkeypatch.setattr('ui.app.catch', print)",
    ],
)
def test_good_manners_are_let_be(line: str) -> None:
    assert list(faults(line)) == []
