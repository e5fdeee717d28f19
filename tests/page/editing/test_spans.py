"""What is what within a line, for the live styles."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.editing.spans import Span, line, pairs
from binder.page.lines import Where

UID = "0198a1b2-1234-7abc-8def-0123456789ab"
IN_CODE = Where(fence="```", blank=False)


def told(text, before=Where()):  # noqa: B008
    return [(text[s.start : s.end], s.style) for s in line(text, before)[0].spans]


@pytest.mark.parametrize(
    ("text", "role", "level", "words"),
    [
        ("", "blank", 0, ""),
        ("words", "text", 0, "words"),
        ("### Head", "heading", 3, "Head"),
        ("#nohead", "text", 0, "#nohead"),
        ("- item", "item", 0, "item"),
        ("    12. item", "item", 1, "item"),
        ("- [ ] box", "item", 0, "box"),
        ("> said", "quote", 1, "said"),
        ("> > said", "quote", 2, "said"),
        ("| a | b |", "table", 0, "| a | b |"),
        ("| --- | --- |", "table", 1, "| --- | --- |"),
        ("* * *", "rule", 0, "* * *"),
        ("[^1]: note", "note", 0, "note"),
        ("```", "fence", 0, "```"),
    ],
)
def test_the_role_of_a_line(text, role, level, words):
    found, _ = line(text, Where())
    assert (found.role, found.level, text[found.words :]) == (role, level, words)


def test_within_code_nothing_is_a_mark():
    assert told("# **no**", IN_CODE) == [("# **no**", "code")]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("**b**", [("**", "mark"), ("b", "bold"), ("**", "mark")]),
        ("a *i* _j_", [("*", "mark"), ("i", "italic"), ("*", "mark"),
                       ("_", "mark"), ("j", "italic"), ("_", "mark")]),
        ("snake_case_word", []),
        ("2 * 3 * 4", []),
        ("~~s~~", [("~~", "mark"), ("s", "struck"), ("~~", "mark")]),
        ("`*c*`", [("`", "mark"), ("*c*", "code"), ("`", "mark")]),
        ("``a`b``", [("``", "mark"), ("a`b", "code"), ("``", "mark")]),
        (r"\*no\*", [("\\", "mark"), ("\\", "mark")]),
        ("a[^1]", [("[^1]", "call")]),
        ("[S](card:major-17)", [("[", "mark"), ("S", "link"), ("](card:major-17)", "target")]),
        (f"[S](leaf:{UID})", [("[", "mark"), ("S", "link"), (f"](leaf:{UID})", "target"),
                              (f":{UID}", "hidden")]),
        ("- [x] d", [("-", "bullet"), ("[x]", "ticked")]),
        ("1. d", [("1.", "number")]),
    ],
)  # fmt: skip
def test_stretches(text, expected):
    assert told(text) == expected


def test_bold_around_italic():
    styles = {(p.style, "a ***x** y*"[p.start : p.end]) for p in pairs("a ***x** y*")}
    assert styles == {("bold", "x"), ("italic", "**x** y")}


@given(st.text(alphabet="ab *_~`[]()!>#-1.|\\:^<", max_size=80))
def test_every_stretch_lies_within_the_line(text):
    found, _ = line(text, Where())
    assert all(0 <= s.start <= s.end <= len(text) for s in found.spans)
    assert 0 <= found.words <= len(text)


@pytest.mark.parametrize(
    "part", ["*", "* a", "[", "`", "_a", "[a](", "`` ` ", "**a ", "![", "> ", "- [", "|", "<http"]
)
def test_a_very_long_line_of_marks_takes_no_time(part):
    found, _ = line(part * 5000, Where())
    assert all(isinstance(span, Span) for span in found.spans)


def test_marks_within_a_label_do_not_reach_beyond_it():
    text = "[a *b](card:major-17) c* d"
    found = [(pair.style, text[pair.start : pair.end]) for pair in pairs(text)]
    assert found == [("link", "a *b")]
    text = "[a *b*](card:major-17) *c*"
    found = [(pair.style, text[pair.start : pair.end]) for pair in pairs(text)]
    assert found == [("link", "a *b*"), ("italic", "b"), ("italic", "c")]
