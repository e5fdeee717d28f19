"""What a leaf's Markdown becomes on the read leaf."""

import re
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import NamedTuple

import pytest

from binder.page.markup.markdown import plain, to_html

ROOT = Path(__file__).resolve().parents[3]
STAR = "card:major-17"
PICTURE = "018f3c2e-7a10-7c3b-9d55-0242ac120002"


class Found(NamedTuple):
    """A card name as the recogniser gives it."""

    start: int
    end: int
    key: str


def star(text: str) -> list[Found]:
    """Every 'The Star' in the words."""
    return [Found(m.start(), m.end(), "major-17") for m in re.finditer(r"[Tt]he\s+Star", text)]


def test_a_table_keeps_its_alignment() -> None:
    html = to_html("| a | b |\n|:-:|--:|\n| 1 | **2** |")
    assert '<th align="center">a</th>' in html
    assert '<td align="right"><strong>2</strong></td>' in html


def test_struck_words() -> None:
    assert to_html("~~one *two*~~ ~~ no ~~ a~b~") == "<p><s>one <em>two</em></s> ~~ no ~~ a~b~</p>"


def test_tick_boxes_are_links_counted_in_the_order_of_the_source() -> None:
    html = to_html("- [ ] one\n- [x] two\n    - [X] three\n\n1. [ ] four")
    assert re.findall(r'<a href="(tick:\d)">(.)</a>', html) == [
        ("tick:0", "□"),
        ("tick:1", "■"),
        ("tick:2", "■"),
        ("tick:3", "□"),
    ]


def test_what_only_looks_like_a_tick_box_stays_as_it_is() -> None:
    html = to_html("```\n- [ ] one\n```\n\n    - [x] two\n\n[ ] three\n\n- [y] four\n- a [ ] five")
    assert "tick:" not in html
    for kept in ("- [ ] one", "- [x] two", "[ ] three", "[y] four", "a [ ] five"):
        assert kept in html


def test_a_footnote_is_called_and_stands_at_the_end_with_a_way_back() -> None:
    html = to_html("Second[^b], first[^a], second again[^b].\n\n[^a]: A.\n[^b]: B.")
    calls = re.findall(
        r'<sup id="(\S+)"><a class="footnote-ref" href="#(\S+)">(\d)</a></sup>', html
    )
    assert [number for _, _, number in calls] == ["1", "2", "1"]
    notes = re.findall(r'<li id="(\S+)">\s*<p>(\w)\.', html)
    assert [word for _, word in notes] == ["B", "A"]
    assert calls[0][1] == notes[0][0]
    ways_back = re.findall(r'class="footnote-backref" href="#(\S+)"', html)
    assert sorted(ways_back) == sorted(call for call, _, _ in calls)


def test_a_footnote_label_of_any_letters_gives_plain_ids() -> None:
    html = to_html('x[^a "b" <c>]\n\n[^a "b" <c>]: note')
    assert 'href="#fn:1"' in html
    assert '<li id="fn:1">' in html


def test_fenced_code_within_a_list_and_left_open() -> None:
    assert "<li>\n<p>a</p>\n<pre><code>b &lt;i&gt;\n</code></pre>" in to_html(
        "- a\n\n    ```\n    b <i>\n    ```"
    )
    assert to_html("```\na\n\n*b*\n") == "<pre><code>a\n\n*b*\n</code></pre>"


def test_less_than_is_a_character_where_no_known_tag_follows() -> None:
    html = to_html("2 <3, <Marlow>, <b>bold</b>, `<b>` and <http://example.org/>")
    assert "2 &lt;3, &lt;Marlow&gt;, <strong>bold</strong>, <code>&lt;b&gt;</code>" in html
    assert '<a href="http://example.org/">' in html


def test_a_script_that_is_never_closed_swallows_nothing() -> None:
    assert "kept" in to_html("a <script> b\n\nkept")


@pytest.mark.parametrize("url", [STAR, f"leaf:{PICTURE}", f"file:{PICTURE}", "source:waite#p112"])
def test_links_within_the_shelf_survive(url: str) -> None:
    assert to_html(f"[words]({url})") == f'<p><a href="{url}">words</a></p>'


def test_a_picture_of_the_binder_is_shown_at_the_size_given() -> None:
    assert to_html(f"![photo](file:{PICTURE})") == f'<p><img src="file:{PICTURE}" alt="photo"></p>'
    sized = to_html(f"![photo](file:{PICTURE})", pictures=lambda uid: (320, 200))
    assert 'width="320" height="200"' in sized


def test_pictures_from_elsewhere_are_kept_out_and_said_so() -> None:
    remote = to_html("![my *photo*](https://example.org/a.png)")
    assert "<img" not in remote
    assert "picture kept out: it lies outside the binder" in remote
    assert "my *photo*" in remote
    missing = to_html(f"![photo](file:{PICTURE})", pictures=lambda uid: None)
    assert "<img" not in missing
    assert "this binder does not hold it" in missing


@pytest.mark.parametrize(
    ("text", "html"),
    [
        ("said:\n- a\n- b", "<p>said:</p><ul><li>a</li><li>b</li></ul>"),
        ("- a\n  - b\n- c", "<ul><li>a<ul><li>b</li></ul></li><li>c</li></ul>"),
        ("1. a\n   - b\n2. c", "<ol><li>a<ul><li>b</li></ul></li><li>c</li></ol>"),
        ("- a\n1. b", "<ul><li>a</li></ul><ol><li>b</li></ol>"),
        ("- born in\n1986. I think", "<ul><li>born in1986. I think</li></ul>"),
        ("- a\n---\nb", "<ul><li>a</li></ul><hr><p>b</p>"),
        ("> a\n---", "<blockquote><p>a</p></blockquote><hr>"),
        ("#1 of three", "<p>#1 of three</p>"),
        ("## In C#", "<h2>In C#</h2>"),
        ("> #1", "<blockquote><p>#1</p></blockquote>"),
    ],
)
def test_lines_mean_what_they_look_like(text: str, html: str) -> None:
    assert to_html(text).replace("\n", "") == html


def test_a_table_may_start_right_under_words() -> None:
    html = to_html("words\n| a | b |\n|---|---|\n| - | - |\n| 1 | 2 |")
    assert html.startswith("<p>words</p>\n<table>")
    assert html.count("<tr>") == 3


def test_threads_render_side_by_side() -> None:
    texts = [f"# {n}\n\n- *a* {n}[^1]\n\n[^1]: note {n}" for n in range(60)]
    alone = [to_html(text) for text in texts]
    with ThreadPoolExecutor(4) as pool:
        assert list(pool.map(to_html, texts)) == alone


def test_nothing_heavy_is_loaded_before_the_first_leaf() -> None:
    told = (
        "import sys, binder.page.markup.markdown;"
        " print({'markdown', 'nh3', 'bs4'} & set(sys.modules))"
    )
    done = subprocess.run(
        [sys.executable, "-c", told], cwd=ROOT, capture_output=True, text=True, check=True
    )
    assert done.stdout.strip() == "set()"


class TestCardNames:
    """Recognised card names become links on the read leaf."""

    def test_in_words(self) -> None:
        html = to_html("It was the Star & all.", link_cards=star)
        assert html == f'<p>It was <a href="{STAR}" class="said">the Star</a> &amp; all.</p>'

    def test_not_in_code_nor_in_links(self) -> None:
        text = "`The Star` [The Star](card:major-00)\n\n    The Star\n\n```\nThe Star\n```"
        assert "said" not in to_html(text, link_cards=star)

    def test_half_in_italics(self) -> None:
        html = to_html("The *Star*", link_cards=star)
        link = f'<a href="{STAR}" class="said">'
        assert html == f"<p>{link}The</a> <em>{link}Star</a></em></p>"

    def test_not_across_two_blocks(self) -> None:
        assert "said" not in to_html("the\n\nStar\n\n- the\n- Star", link_cards=star)

    def test_not_across_code(self) -> None:
        assert "said" not in to_html("the`x`Star the `x` Star", link_cards=star)

    def test_left_alone_in_headings_if_asked(self) -> None:
        html = to_html("# The Star\n\nThe Star", link_cards=star, unlinked={"h1"})
        assert html.count("said") == 1

    def test_looked_for_once_in_all_words(self) -> None:
        asked = []
        to_html(
            "# One\n\ntwo *three* `four` five\n\n- six", link_cards=lambda t: asked.append(t) or []
        )
        assert asked == ["One\n\ntwo three \ufffc five\n\nsix"]

    def test_entities_around_a_name_stay_right(self) -> None:
        html = to_html("a < b & The Star > c", link_cards=star)
        assert html == (f'<p>a &lt; b &amp; <a href="{STAR}" class="said">The Star</a> &gt; c</p>')

    def test_in_tables_lists_quotes_and_footnotes(self) -> None:
        text = "- The Star\n\n> The Star\n\n|a|b|\n|-|-|\n|The Star|b|\n\nx[^1]\n\n[^1]: The Star"
        assert to_html(text, link_cards=star).count("said") == 4


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("  as it is ", "as it is"),
        ("# The *Star*", "The Star"),
        ("- [ ] one\n- [x] two", "one\ntwo"),
        ("[p. 112](source:waite#p112) and ![photo](https://example.org/a.png)", "p. 112 and photo"),
        ("a note[^1]\n\n[^1]: here", "a note\nhere"),
        ("| a | b |\n|---|---|\n| 1 | 2 |", "a b\n1 2"),
        ("5 < 6 &amp; **7**", "5 < 6 & 7"),
        ("> quoted\n\n    code", "quoted\ncode"),
        ("1986. A year", "A year"),
    ],
)
def test_plain_words(text: str, words: str) -> None:
    assert plain(text) == words


@pytest.mark.parametrize(
    "text", ["- [ ] one\n- [x] two", "- [ ] one\n\n- [x] two", "1. [ ] one\n\n2. [x] two"]
)
def test_boxes_of_tight_and_loose_lists_are_ticked_by_their_number(text: str) -> None:
    assert re.findall(r'<a href="tick:(\d)">', to_html(text)) == ["0", "1"]


@pytest.mark.parametrize("text", ["[ ] one", "> [x] two", "- one [ ] two"])
def test_a_box_anywhere_else_stays_as_it_was_typed(text: str) -> None:
    html = to_html(text)
    assert "tick:" not in html
    assert "[ ]" in html or "[x]" in html


def test_a_picture_keeps_its_title() -> None:
    uid = "018f3c2e-7a10-7c3b-9d55-0242ac120002"
    html = to_html(f'![a map](file:{uid} "by <B> & me")')
    assert f'<img src="file:{uid}" alt="a map" title="by &lt;B&gt; &amp; me">' in html
    assert "title" not in to_html(f"![a map](file:{uid})")
