"""Markdown of our dialect written from a mended tree, with nothing in it misread later."""
# mypy: disable-error-code="misc"
# (the package's classes are untyped here, and extending it means deriving from them)

import re
from typing import Any

from bs4 import Tag
from bs4.element import NavigableString, PageElement
from markdownify import MarkdownConverter

_BLOCKS = re.compile(
    r"p|div|section|article|header|footer|main|aside|fig\w+|h[1-6r]|ul|ol|li|blockquote|pre|table"
    r"|t\w+|caption|details|summary|\[document\]"
)
_STARTS = re.compile(r"(\s*)(\d{1,9}(?=\.(?:\s|$))|(?=[#>=|]|[-+*](?:\s|$)|--|~~~))")
_MARKS = re.compile(
    r"\\(?=[!-/:-@\[-`{-~]|\s*$)"  # a backslash that would escape the next sign
    r"|(?<!\s)\*|\*(?!\s|$)|(?<!\w)_|_(?!\w)|`|~(?=~)"
    r"|\[(?=\^|[^\[\]]*(?:\]\s?[\[(:]|$))"
)
_TAGS = re.compile(r"<(?=[A-Za-z/!?])")
_ENTITY = re.compile(r"&(?=#|\w+;)")
_EVERYWHERE = ["p", "div", "li", "td", "th", "a", "strong", "em", "s", "blockquote", "[document]"]
_EVERYWHERE += [f"h{level}" for level in range(1, 7)]


class Writer(MarkdownConverter):
    """markdownify set to our dialect: four spaces nest, every sign that means nothing escaped."""

    def __init__(self) -> None:
        super().__init__(
            heading_style="atx",
            bullets="-",
            wrap=True,
            wrap_width=None,
            sup_symbol="<sup>",
            sub_symbol="<sub>",
            table_infer_header=True,
            keep_inline_images_in=_EVERYWHERE,
        )

    def escape(self, text: str, parent_tags: set[str]) -> str:
        """Words in which no sign will be taken for a mark."""
        text = _MARKS.sub(r"\\\g<0>", text)
        text = _TAGS.sub("&lt;", _ENTITY.sub("&amp;", text))
        return text.replace("|", r"\|") if parent_tags & {"td", "th"} else text

    def process_text(self, el: NavigableString, parent_tags: set[str] | None = None) -> str:
        """Words, with care for what their place in the line would make of them."""
        text: str = super().process_text(el, parent_tags)
        within = parent_tags or set()
        if "_noformat" in within:
            return text
        if "_inline" not in within and _STARTS.match(text) and _begins(el):
            text = _STARTS.sub(r"\1\2\\", text, count=1)
        after = el.next_sibling
        if text.endswith("!") and isinstance(after, Tag) and after.name == "a":
            text = text[:-1] + r"\!"
        return text

    def convert_li(self, el: Tag, text: str, parent_tags: set[str]) -> str:
        """An item, all its further lines four spaces in."""
        lines = (text or "").strip().split("\n")
        parent = el.parent
        marker = "-"
        if parent is not None and parent.name == "ol":
            start = str(parent.get("start", "1"))
            first = int(start) if start.isdecimal() and len(start) < 9 else 1
            marker = f"{first + len(el.find_previous_siblings('li'))}."
        further = [f"    {line}" if line else "" for line in lines[1:]]
        return "\n".join([f"{marker} {lines[0]}", *further]) + "\n"

    def convert_hN(self, n: int, el: Tag, text: str, parent_tags: set[str]) -> str:
        """A heading; a # at its end is one of its words."""
        end = len(text.rstrip()) - len(text.rstrip().rstrip("#"))
        if end:
            text = text.rstrip()[:-end] + r"\#" * end
        made: str = super().convert_hN(n, el, text, parent_tags) if text.strip() else ""
        return made

    def convert_pre(self, el: Tag, text: str, parent_tags: set[str]) -> str:
        """Code, in a fence longer than any within."""
        runs = re.findall(r"`{3,}", text)
        fence = "`" * max(3, *(len(run) + 1 for run in runs), 3)
        return f"\n\n{fence}\n{text.strip(chr(10))}\n{fence}\n\n" if text.strip() else ""

    def convert_br(self, el: Tag, text: str, parent_tags: set[str]) -> str:
        """A new line; two of them together part paragraphs, one at the end of a block is none."""
        if "_inline" in parent_tags:
            return " "
        return "  \n" if _more(el) else ""

    def convert_sup(self, el: Tag, text: str, parent_tags: set[str]) -> Any:
        """Raised words."""
        return f"<sup>{text}</sup>" if text.strip() else text


def _begins(el: PageElement) -> bool:
    """Whether words stand first in their line."""
    node: PageElement | None = el
    while node is not None:
        before = node.previous_sibling
        while isinstance(before, NavigableString) and not before.strip():
            before = before.previous_sibling
        if before is not None:
            return isinstance(before, Tag) and bool(
                before.name == "br" or _BLOCKS.fullmatch(before.name)
            )
        node = node.parent
        if isinstance(node, Tag) and _BLOCKS.fullmatch(node.name):
            return True
    return True


def _more(el: Tag) -> bool:
    """Whether anything follows in the block."""
    return any(isinstance(kid, Tag) or str(kid).strip() for kid in el.next_siblings)
