"""Nothing a leaf says runs, loads or points outside what is allowed."""

from html.parser import HTMLParser

import pytest
from hypothesis import given
from hypothesis import strategies as st

from binder.page.markup.blocks import blocks
from binder.page.markup.markdown import plain, to_html

ALLOWED = """
    p h1 h2 h3 h4 h5 h6 ul ol li blockquote table thead tbody tr th td pre hr br div
    a img em strong s code sup sub small
"""
TAGS = frozenset(ALLOWED.split())
ATTRIBUTES = {
    "a": {"href", "title", "class"},
    "img": {"src", "alt", "title", "width", "height"},
    "ol": {"start"},
    "th": {"align"},
    "td": {"align"},
    "sup": {"id"},
    "li": {"id"},
    "div": {"class"},
}
SCHEMES = ("card:", "leaf:", "source:", "file:", "http:", "https:", "mailto:", "tick:", "#fn")


class Inspector(HTMLParser):
    """Reads HTML as a browser would and objects to whatever is not allowed."""

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        assert tag in TAGS, tag
        for name, value in attrs:
            assert name in ATTRIBUTES.get(tag, set()), (tag, name)
            if name == "href":
                assert value is not None
                assert value.startswith(SCHEMES), value
                assert not value.startswith("file:/"), value
            if name == "src":
                assert value is not None
                assert value.startswith("file:"), value
                assert "/" not in value, value

    def handle_comment(self, data: str) -> None:
        raise AssertionError(data)

    def handle_decl(self, decl: str) -> None:
        raise AssertionError(decl)

    def handle_pi(self, data: str) -> None:
        raise AssertionError(data)


def inspect(html: str) -> str:
    """The HTML, having been looked at."""
    inspector = Inspector()
    inspector.feed(html)
    inspector.close()
    return html


HOSTILE = [
    "<script>alert(1)</script>",
    "<SCRIPT SRC=http://example.org/x.js></SCRIPT>",
    "<scr<script>ipt>alert(1)</scr</script>ipt>",
    "[a](javascript:alert(1))",
    "[a](JaVaScRiPt:alert(1))",
    "[a](JAVASCRIPT:alert(1))",
    "[a](java\tscript:alert(1))",
    "[a](&#106;avascript:alert(1))",
    "[a](&#x6A;avascript&colon;alert(1))",
    "[a](javascript&#58;alert(1))",
    "[a]( javascript:alert(1))",
    "[a](<javascript:alert(1)>)",
    "[a](\x01javascript:alert(1))",
    "[a][b]\n\n[b]: javascript:alert(1)",
    "[a][b]\n\n[b]: <JavaScript:alert(1)>",
    "<javascript://example.org/%0aalert(1)>",
    "[a](vbscript:msgbox(1))",
    "[a](VBScript:msgbox(1))",
    "[a](data:text/html;base64,PHNjcmlwdD4=)",
    "[a](DATA:text/html,x)",
    "![a](data:image/svg+xml;base64,PHN2Zz4=)",
    "![a](data:image/png;base64,iVBORw0KGgo=)",
    "[a](file:///etc/passwd)",
    "[a](FILE:///etc/passwd)",
    "[a](file:/etc/passwd)",
    "[a](file:etc/passwd)",
    "[a](file://server/share)",
    "[a](file:../../etc/passwd)",
    "[a](file:018f3c2e-7a10-7c3b-9d55-0242ac120002/../../x)",
    "![a](file:///etc/passwd)",
    "![a](file:018f3c2e-7a10-7c3b-9d55-0242ac120002?x)",
    "![a](http://example.org/a.png)",
    "![a](//example.org/a.png)",
    "![a](a.png)",
    "[a](/etc/passwd)",
    "[a](tick:0)",
    '<a href="tick:0">x</a>',
    '<img src="x" onerror="alert(1)">',
    "<img src=x onerror=alert(1)//",
    '<p onclick="alert(1)">a</p>',
    '<b onmouseover="alert(1)">a</b>',
    '<svg onload="alert(1)"><script>alert(1)</script></svg>',
    '<svg><a xlink:href="javascript:alert(1)"><text>a</text></a></svg>',
    '<svg><image href="http://example.org/a.png"/></svg>',
    "<math><mtext><style><img src=x onerror=alert(1)></style></mtext></math>",
    '<meta http-equiv="refresh" content="0;url=http://example.org/">',
    '<base href="http://example.org/">',
    '<link rel="stylesheet" href="http://example.org/a.css">',
    "<style>@import 'http://example.org/a.css'; p {background: url(http://example.org/)}</style>",
    '<p style="background: url(http://example.org/a.png)">a</p>',
    '<table background="http://example.org/a.png"><tr><td>a</td></tr></table>',
    '<iframe src="http://example.org/"></iframe>',
    '<iframe srcdoc="<script>alert(1)</script>"></iframe>',
    '<object data="http://example.org/"></object><embed src="http://example.org/">',
    '<form action="http://example.org/"><input type="image" src="http://example.org/a.png"></form>',
    '<video src="http://example.org/a.mp4" poster="http://example.org/a.png"></video>',
    '<img srcset="http://example.org/a.png 2x" src="http://example.org/a.png">',
    '<a href="http://example.org/" ping="http://example.org/p" target="_blank">a</a>',
    '<div id="x" class="said">a</div>',
    "<!--[if IE]><script>alert(1)</script><![endif]-->",
    "<?php echo 1 ?>",
    "<![CDATA[<script>alert(1)</script>]]>",
    "<!DOCTYPE html><html><body onload=alert(1)>a",
    "<textarea><img src=x onerror=alert(1)></textarea>",
    '<noscript><p title="</noscript><img src=x onerror=alert(1)>"></noscript>',
    "<xmp><script>alert(1)</script></xmp>",
    "<plaintext>a",
    '[a](http://example.org/ "x\\" onmouseover=\\"alert(1)")',
    '![a" onerror="alert(1)](http://example.org/)',
    "\x02wzxhzdk:0\x03 \x02klzzwxh:0001\x03 \x02less\x03 \x02box:0: \x03",
    "- \x02box:0:x\x03 a",
    "`<script>alert(1)</script>`",
    "    <script>alert(1)</script>",
    "```<script>\n<script>alert(1)</script>\n```",
]


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_markdown_is_harmless(text: str) -> None:
    html = inspect(to_html(text)).lower()
    for part in ("<script", "<iframe", "<svg", "<style", "<meta", 'javascript:alert(1)"', "tick:"):
        assert part not in html
    assert "before" in to_html(f"before\n\n{text}\n\nafter")


@pytest.mark.parametrize("text", HOSTILE)
def test_what_comes_after_hostile_markdown_is_still_there(text: str) -> None:
    if text.startswith(("```", "<plaintext")) or "<!DOCTYPE" in text:
        text += "\n```\n" if text.startswith("```") else ""
    assert "after all" in to_html(f"{text}\n\nafter all")


@pytest.mark.parametrize(
    "url",
    ["file:///etc/passwd", "javascript:alert(1)", "data:text/html,x", "ftp://example.org/", "x"],
)
def test_a_link_not_allowed_loses_its_address_and_keeps_its_words(url: str) -> None:
    assert to_html(f"see [the *words*]({url}) here") == "<p>see the <em>words</em> here</p>"


def test_schemes_come_out_in_small_letters() -> None:
    assert 'href="https://Example.org/A"' in to_html("[a](HTTPS://Example.org/A)")


PIECES = st.sampled_from(
    [
        *(
            "a",
            "The Star",
            " ",
            "  ",
            "\n",
            "\n\n",
            "    ",
            "\t",
            "- ",
            "1. ",
            "# ",
            "> ",
            "* ",
            "+ ",
        ),
        *(
            "*",
            "**",
            "_",
            "__",
            "`",
            "```",
            "~~",
            "~~~",
            "|",
            "|-|-|",
            "---",
            "===",
            "\\",
            "!",
            "&",
        ),
        *(
            "[",
            "]",
            "(",
            ")",
            "[^1]",
            "[^1]: ",
            "[a]: ",
            "](",
            "][",
            "- [ ] ",
            "- [x] ",
            "&amp;",
            "&#x;",
        ),
        *(
            "<",
            ">",
            "<b>",
            "</b>",
            "<p>",
            "</p>",
            "<div>",
            "<table>",
            "<td>",
            "<!--",
            "-->",
            "<script>",
        ),
        *(
            "</script>",
            "<a href='javascript:x'>",
            "<img src=x onerror=y>",
            "<li id='fn:1'>",
            "\x02",
            "\x03",
        ),
        *(
            "file:",
            "card:major-17",
            "http://example.org/",
            "javascript:x",
            '"',
            "'",
            "\x00",
            "\r",
            "\u2028",
        ),
    ]
)


@given(st.lists(PIECES, max_size=30).map("".join) | st.text(max_size=60))
def test_any_text_gives_harmless_html_and_a_tree(text: str) -> None:
    html = inspect(to_html(text, link_cards=lambda words: []))
    blocks(html)
    plain(text)
