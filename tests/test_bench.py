"""What the bench's table says, and when it says nothing."""

import sys
from pathlib import Path

import pytest

BENCH = Path(__file__).resolve().parent / "bench"


@pytest.fixture
def table(monkeypatch, tmp_path):
    monkeypatch.syspath_prepend(str(BENCH))
    import table

    yield table.Table(tmp_path / "table.md")
    for name in ("table", "measuring"):
        sys.modules.pop(name, None)


def row(what="a turn / a bare turn", ratios=(1.0, 1.2, 1.9), **others):
    return {
        "what": what, "ratios": list(ratios), "bound": 1.5, "absolute": False,
        "load": 0.0, "share": 1.0,
    } | others  # fmt: skip


def test_a_row_has_its_median_its_spread_and_whether_it_keeps_to_its_aim(table):
    said = table.put("turn", row())
    assert "1.20 (1.00 to 1.90, 3)" in said
    assert said.endswith("1.5 met")
    assert "| a turn / a bare turn | 1.20 | 1.00 | 1.90 | 3 | 1.5 | 0.00 | met |" in (
        table.path.read_text()
    )
    assert table.put("turn", row(ratios=(1.6, 1.7, 1.0))).endswith("NOT MET")


@pytest.mark.parametrize("busy", [{"load": 0.5}, {"share": 0.8}])
def test_on_a_busy_machine_nothing_is_judged(table, busy):
    assert table.put("turn", row(ratios=(9.0,), **busy)).endswith("busy machine, not judged")


def test_a_time_set_by_us_is_marked(table):
    assert table.put("turn", row(absolute=True)).endswith("met (absolute)")


def test_a_bench_run_again_takes_the_place_of_its_rows_and_of_no_others(table):
    table.put("turn", row("a turn"))
    table.put("turn", row("another turn"))
    table.put("find", row("a word"))
    again = type(table)(table.path)
    again.put("turn", row("a turn", ratios=(5.0,)))
    told = table.path.read_text()
    assert "| a turn | 5.00" in told
    assert "| a word | 1.20" in told
    assert "another turn" not in told
    assert not again.ended("turn")
    again.put("turn", {"ended": True})
    assert again.ended("turn")
