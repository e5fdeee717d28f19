"""The tree that print walks."""

import json

from binder.page.markup.blocks import Block, blocks
from binder.page.markup.markdown import to_html

UID = "018f3c2e-7a10-7c3b-9d55-0242ac120002"


def tree(text: str) -> list[Block]:
    """The blocks of some Markdown, once through JSON."""
    made: list[Block] = json.loads(json.dumps(blocks(to_html(text))))
    return made


def text(words: str) -> Block:
    return {"t": "text", "s": words}


def test_paragraphs_headings_rules_and_code() -> None:
    assert tree("## A *b*\n\none\ntwo\n\n---\n\n```\nc <d>\n  e\n```") == [
        {"t": "h", "level": 2, "c": [text("A "), {"t": "em", "c": [text("b")]}]},
        {"t": "p", "c": [text("one two")]},
        {"t": "hr"},
        {"t": "pre", "text": "c <d>\n  e"},
    ]


def test_inlines() -> None:
    line = tree("**a** ~~b~~ `c` <sup>d</sup> [e](card:major-17)  \nf")[0]["c"]
    assert line == [
        {"t": "strong", "c": [text("a")]},
        text(" "),
        {"t": "strike", "c": [text("b")]},
        text(" "),
        {"t": "code", "s": "c"},
        text(" "),
        {"t": "sup", "c": [text("d")]},
        text(" "),
        {"t": "link", "to": "card:major-17", "said": False, "c": [text("e")]},
        {"t": "br"},
        text(" f"),
    ]


def test_lists_nest_and_know_whether_they_are_tight() -> None:
    assert tree("3. a\n4. b\n    - c") == [
        {
            "t": "ol",
            "tight": True,
            "start": 3,
            "items": [
                [{"t": "p", "c": [text("a")]}],
                [
                    {"t": "p", "c": [text("b")]},
                    {"t": "ul", "tight": True, "items": [[{"t": "p", "c": [text("c")]}]]},
                ],
            ],
        }
    ]
    assert tree("- a\n\n- b")[0]["tight"] is False


def test_tick_boxes() -> None:
    items = tree("- [ ] a\n- [x] b")[0]["items"]
    assert [item[0]["c"][0] for item in items] == [
        {"t": "tick", "done": False},
        {"t": "tick", "done": True},
    ]


def test_a_table_has_as_many_cells_in_each_row() -> None:
    table = tree("| a | b |\n|:--|--:|\n| 1 |\n| 2 | *3* | 4 |")[0]
    assert table["align"] == ["left", "right", ""]
    assert table["head"] == [[text("a")], [text("b")], []]
    assert table["rows"] == [
        [[text("1")], [], []],
        [[text("2")], [{"t": "em", "c": [text("3")]}], [text("4")]],
    ]


def test_a_table_in_html_without_a_head() -> None:
    table = tree("<table><tr><td>a</td><td>b</td></tr><tr><td>c</td></tr></table>")[0]
    assert table["head"] == []
    assert table["rows"] == [[[text("a")], [text("b")]], [[text("c")], []]]


def test_footnotes_lie_where_they_are_called() -> None:
    made = tree("a[^x] b[^y] c[^x]\n\n[^y]: Why\n[^x]: Ex\n\n    more")
    assert made == [
        {
            "t": "p",
            "c": [
                text("a"),
                {
                    "t": "foot",
                    "n": 1,
                    "again": False,
                    "c": [{"t": "p", "c": [text("Ex")]}, {"t": "p", "c": [text("more")]}],
                },
                text(" b"),
                {"t": "foot", "n": 2, "again": False, "c": [{"t": "p", "c": [text("Why")]}]},
                text(" c"),
                {"t": "foot", "n": 1, "again": True, "c": []},
            ],
        }
    ]


def test_a_note_that_calls_itself_ends() -> None:
    foot = tree("a[^x]\n\n[^x]: b[^x]")[0]["c"][1]
    assert foot["c"][0]["c"][1] == {"t": "foot", "n": 1, "again": True, "c": []}


def test_a_note_never_called_is_not_lost() -> None:
    assert tree("a\n\n[^x]: b") == [
        {"t": "p", "c": [text("a")]},
        {"t": "p", "c": [text("b")]},
    ]


def test_pictures_alone_and_in_a_line() -> None:
    assert tree(f"![x](file:{UID})") == [{"t": "img", "file": UID, "alt": "x"}]
    assert tree(f"a ![x](file:{UID})")[0]["c"][1] == {"t": "img", "file": UID, "alt": "x"}


def test_what_the_program_says_is_a_note() -> None:
    assert tree("![x](https://example.org/a.png)")[0]["t"] == "note"


def test_recognised_card_names_are_told_apart() -> None:
    html = '<p><a href="card:major-17" class="said">The Star</a></p>'
    assert blocks(html)[0]["c"][0]["said"] is True


def test_loose_words_and_boxes_of_html_become_paragraphs() -> None:
    assert tree("<div>a <b>b</b><div>c</div></div>") == [
        {"t": "p", "c": [text("a "), {"t": "strong", "c": [text("b")]}]},
        {"t": "p", "c": [text("c")]},
    ]


def test_a_box_that_pretends_to_hold_footnotes_keeps_its_words() -> None:
    made = tree('<div class="footnote"><p>kept</p><ol><li>too</li></ol></div>')
    assert [block["t"] for block in made] == ["p", "ol"]
