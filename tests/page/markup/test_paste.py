"""Rich text from elsewhere becomes clean Markdown."""

import base64
import html as escaping

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from binder.page.markup.markdown import plain, to_html
from binder.page.markup.paste import LONGEST, from_html

DOT = b"\x89PNG\r\n\x1a\n and the rest of a picture"
DATA = "data:image/png;base64," + base64.b64encode(DOT).decode()
UID = "018f3c2e-7a10-7c3b-9d55-0242ac120002"


@pytest.mark.parametrize(
    ("html", "text"),
    [
        ("<h2>A head</h2><p>one</p><p>two</p>", "## A head\n\none\n\ntwo"),
        ("<p>a <b>b</b> <i>c</i> <s>d</s> <code>e</code></p>", "a **b** *c* ~~d~~ `e`"),
        ("<p>x<b> y </b>z</p>", "x **y** z"),
        ("<i>a</i><i>b</i>", "*ab*"),
        ("<b><p>one</p><p>two</p></b>", "one\n\ntwo"),
        ("<b><b>x</b></b>", "**x**"),
        ("<h2>C#</h2><h3>## </h3><h2> </h2>", "## C\\#\n\n### \\#\\#"),
        ("<h2>one<br>two</h2><p>x<sup> </sup>y<sup>2</sup></p>", "## one two\n\nx y<sup>2</sup>"),
        ("<pre>\n</pre><p>a</p>", "a"),
        ("<ul><li>a<p>b</p><p></p><p>c</p></li></ul>", "- a\n\n    b\n\n    c"),
        ("<p>a <b style='color:red;font-weight:normal'>b</b> c</p>", "a b c"),
        ("<p>a <strong style='font-weight:400'>b</strong> <b>c</b></p>", "a b **c**"),
        ("<h3><b>bold all through</b></h3>", "### bold all through"),
        ("<p>one<br>two<br><br>three<br></p>", "one  \ntwo\n\nthree"),
        ("<ul><li>a<ul><li>b</li></ul></li><li>c</li></ul>", "- a\n    - b\n- c"),
        ("<ul><li>a</li><ul><li>b</li></ul></ul>", "- a\n    - b"),
        ("<ol start='3'><li>a</li><li>b</li></ol>", "3. a\n4. b"),
        (
            "<ul><li><input type='checkbox' checked> a</li><li>\u2610 b</li></ul>",
            "- [x] a\n- [ ] b",
        ),
        ("<blockquote><p>a</p><p>b</p></blockquote>", "> a\n>\n> b"),
        ("<pre>a\n  ```\nb</pre>", "````\na\n  ```\nb\n````"),
        ("<dl><dt>term</dt><dd>meaning</dd></dl>", "**term**\n\nmeaning"),
        (
            "<table><tr><th>a</th><th>b|c</th></tr><tr><td>1</td><td><p>2</p></td></tr></table>",
            "| a | b\\|c |\n| --- | --- |\n| 1 | 2 |",
        ),
        ("<table><tr><td><p>one</p></td></tr><tr><td>two</td></tr></table>", "one\n\ntwo"),
        ("<a href='https://example.org/a b(c)'>x</a>", "[x](https://example.org/a%20b%28c%29)"),
        (
            "<a href='https://example.org'><div>one<p>two</p></div></a>",
            "[one two](https://example.org)",
        ),
        (
            f"<a href='leaf:{UID}'>x</a> <a href='card:major-17'>y</a>",
            f"[x](leaf:{UID}) [y](card:major-17)",
        ),
        ("<a name='top'>x</a> <a href='#top'>y</a> <a href='javascript:z()'>z</a>", "x y z"),
        ("wow!<a href='https://example.org'>x</a>", "wow\\![x](https://example.org)"),
        (f"<p>see <img src='file:{UID}' alt='the map'></p>", f"see ![the map](file:{UID})"),
        ("<p>see <img src='file:///etc/map.png' alt='the map'></p>", "see the map"),
        ("a<img src='https://example.org/d.png' height='1' alt=''>b", "ab"),
        ("a<img src='https://example.org/d.png' width='1' alt=''>b", "ab"),
        ("a <img src='https://example.org/d.png' alt='map'>", "a [map](https://example.org/d.png)"),
        ("<font style='font-weight:bold'>a</font> <tt style='font-weight:bold'>b</tt>", "**a** b"),
        ("H<sub>2</sub>O", "H<sub>2</sub>O"),
        ("<p> <span># no heading</span></p>", "\\# no heading"),
        # Taking the bold away later is not to make a heading or an item of the words.
        ("<p> <b># 3</b></p>", "**\\# 3**"),
        ("<div><p>a</p>\n <b>1. <i>b</i></b></div>", "a\n\n**1\\. *b***"),
        ("<p>words <b># 3</b></p>", "words **# 3**"),
        ("<p>words<br> <span># 3</span></p>", "words  \n \\# 3"),
        ("", ""),
        ("only words", "only words"),
    ],
)
def test_each_kind(html: str, text: str) -> None:
    assert from_html(html).text == text


def test_bold_and_italic_by_style() -> None:
    html = (
        "<b style='font-weight:normal'><p><span style='font-weight:700;color:red'>a</span> "
        "<span style='font-style:italic'>b</span> "
        "<span style='text-decoration:line-through'>c</span>"
        " <span style='font-size:11pt'>d</span></p></b>"
    )
    assert from_html(html).text == "**a** *b* ~~c~~ d"


def test_tracking_and_what_is_hidden_goes() -> None:
    html = (
        "<p>a<img src='https://example.org/dot.gif' width='1' height='1'>"
        "<span style='display: none'>secret</span><script>x()</script><style>p{}</style>"
        "<sup><a href='#cite'>[1]</a></sup> "
        "<a href='https://example.org/?q=1&utm_source=mail&gclid=2'>b</a></p>"
    )
    assert from_html(html).text == "a [b](https://example.org/?q=1)"


def test_only_the_marked_fragment_of_a_clipboard_counts() -> None:
    html = (
        "<html><head><title>t</title></head><body>x<!--StartFragment-->a<!--EndFragment--></body>"
    )
    assert from_html(html).text == "a"


def test_white_space_is_made_plain() -> None:
    html = "<p>a&nbsp;b \u200b c\n  d\u00ad</p>\n\n\n<p>&nbsp;</p><p>e </p>"
    assert from_html(html).text == "a b c d\n\ne"


class TestPictures:
    """Pictures within the text are handed over; those of the network are only pointed at."""

    def test_within(self) -> None:
        pasted = from_html(f"<p>a <img src='{DATA}' alt='the [layout]'> b <img src='{DATA}'></p>")
        assert pasted.text == "a ![the layout](picture:0001) b ![](picture:0001)"
        assert pasted.pictures == [("picture:0001", "image/png", DOT)]
        stored = pasted.text.replace(pasted.pictures[0].placeholder, f"file:{UID}")
        assert to_html(stored).count(f'<img src="file:{UID}"') == 2

    def test_in_a_table(self) -> None:
        html = f"<table><tr><td>a</td><td><img src='{DATA}' alt='b'></td></tr></table>"
        assert "![b](picture:0001)" in from_html(html).text

    def test_from_the_network(self) -> None:
        html = "<img src='https://example.org/a.png' alt='a cat'> <img src='https://example.org/b.png'>"
        text = "[a cat](https://example.org/a.png) [picture](https://example.org/b.png)"
        assert from_html(html).text == text

    def test_what_is_no_picture(self) -> None:
        svg, broken = "data:image/svg+xml;base64,PHN2Zz4=", "data:image/png;base64,@"
        html = f"<img src='{svg}' alt='a'><img src='{broken}' alt='b'>"
        pasted = from_html(html)
        assert pasted.pictures == []
        assert pasted.text == "ab"

    def test_one_that_is_not_shown_is_not_handed_over(self) -> None:
        assert from_html(f"<p style='display:none'><img src='{DATA}'></p>").pictures == []


WORDS = st.text(
    alphabet=st.sampled_from("ab1 .!?*_`~#>+-=|\\[](){}<>&;:\"'/^\n"), min_size=1, max_size=30
)


@given(st.lists(WORDS, min_size=1, max_size=3))
def test_pasted_words_read_as_they_were(paragraphs: list[str]) -> None:
    html = "".join(f"<p>{escaping.escape(words)}</p>" for words in paragraphs)
    shown = [" ".join(words.split()) for words in paragraphs]
    assert plain(from_html(html).text) == "\n".join(words for words in shown if words)


@given(st.sampled_from(["li", "h2", "td", "blockquote", "strong", "em"]), WORDS)
def test_pasted_words_read_as_they_were_anywhere(tag: str, words: str) -> None:
    assume(" ".join(words.split())[:3] != "[ ]")  # in an item that is a tick box, as it should be
    inner = f"<{tag}>{escaping.escape(words)}</{tag}>"
    around = {"li": "<ul>{}</ul>", "td": "<table><tr><td>x</td>{}</tr></table>"}.get(
        tag, "<p>a {} b</p>"
    )
    html = around.format(inner) if tag != "h2" else inner
    shown = " ".join(words.split())
    assert "".join(shown.split()) in "".join(plain(from_html(html).text).split())


PIECES = st.sampled_from(
    [
        *(
            "<p>",
            "</p>",
            "<b>",
            "</b>",
            "<i>",
            "</i>",
            "<ul>",
            "<li>",
            "</ul>",
            "<ol>",
            "</ol>",
            "<table>",
        ),
        *(
            "<tr>",
            "<td>",
            "</table>",
            "<br>",
            "<a href='https://example.org'>",
            "</a>",
            "<img src='x'>",
        ),
        *(
            "<h1>",
            "</h1>",
            "<pre>",
            "</pre>",
            "<blockquote>",
            "</blockquote>",
            "<div>",
            "</div>",
            "a",
            " ",
        ),
        *(
            "<span style='font-weight:bold'>",
            "</span>",
            "<input type=checkbox>",
            "<dl><dt>",
            "<dd>",
            "&lt;",
        ),
    ]
)


@given(st.lists(PIECES, max_size=30).map("".join) | st.text(max_size=40))
def test_any_html_can_be_pasted(html: str) -> None:
    to_html(from_html(html).text)


@pytest.mark.parametrize(
    "text",
    [
        "## Head\n\nwords **bold** *italic* ~~struck~~ `code`\n\n- a\n    - b\n        - c\n- d",
        "1. a\n2. b\n\n> quote\n>\n> - in\n> - it",
        "| a | b |\n| --- | --- |\n| 1 | *2* |\n\n```\ncode\n```\n\n---\n\n[x](https://example.org)",
        "- [ ] a\n- [x] b",
    ],
)
def test_what_the_read_leaf_shows_pastes_back_as_it_was_written(text: str) -> None:
    assert from_html(to_html(text)).text == text


def test_a_whole_library_of_html_gives_its_words() -> None:
    html = "<p>word <b>word</b></p>" * (LONGEST // 20)
    assert from_html(html).text.startswith("word word\nword word")


def test_deep_nests_give_their_words() -> None:
    assert "x" in from_html("<div><blockquote>" * 3_000 + "x").text
