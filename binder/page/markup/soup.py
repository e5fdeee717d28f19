"""From the HTML of browsers and word processors to Markdown: what is kept, mended and written.

Import this module only when something is pasted: it loads nh3, BeautifulSoup and markdownify.
"""

import re
from collections.abc import Iterable
from urllib.parse import parse_qsl, urlencode, urlsplit, urlunsplit

import nh3
from bs4 import BeautifulSoup, Tag

from binder.page.address import WEB, WRITTEN, Scheme
from binder.page.markup.clean import link
from binder.page.markup.written import Writer

_BLOCK_NAMES = (
    "p div section article header footer main aside figure figcaption h1 h2 h3 h4 h5 h6"
    " ul ol li blockquote pre table thead tbody tfoot tr td th caption dl dt dd hr details summary"
)
_INLINE_NAMES = "a b strong i em s del strike code kbd samp tt sup sub q br img span font input"
_GONE = (
    "script style svg math iframe noscript template object noembed noframes head title nav"
    " button select textarea"
)
_BLOCKS = _BLOCK_NAMES.split()
_LOUD = {"b": "strong", "strong": "strong", "i": "em", "em": "em"}
_LOUD |= {"s": "s", "del": "s", "strike": "s"}
_TRACKING = re.compile(r"utm_\w+|[a-z]{1,3}clid|mc_[ce]id|_hs\w+|igshid|yclid|ref_src", re.I)
_EMPTY_BOX, _TICKED_BOX = "□☐", "■☑☒✓✔"

_CLEANER = nh3.Cleaner(
    tags=set(_BLOCKS) | set(_INLINE_NAMES.split()),
    clean_content_tags=set(_GONE.split()),
    attributes={
        "*": {"style"},
        "a": {"href"},
        "img": {"src", "alt", "width", "height"},
        "ol": {"start"},
        "td": {"colspan"},
        "th": {"colspan"},
        "input": {"type", "checked"},
    },
    filter_style_properties={
        *("font-weight", "font-style", "text-decoration", "text-decoration-line"),
        *("display", "visibility"),
    },
    link_rel=None,
    url_schemes={*map(str, (*WRITTEN, *WEB)), "picture"},
)


def markdown(html: str) -> str:
    """The Markdown of some HTML."""
    soup = BeautifulSoup(_CLEANER.clean(html), "html.parser")
    for mend in (_hide, _style, _links, _pictures, _boxes, _lists, _tables, _terms, _loud):
        mend(soup)
    soup.smooth()
    text: str = Writer().convert_soup(soup)
    text = re.sub(r"[ \t]*\n(?:[ \t]*\n)+", "\n\n", text)
    return re.sub(r"(?<! ) (?=\n)| +\Z", "", text).strip("\n")


def _all(soup: Tag, names: Iterable[str]) -> list[Tag]:
    """The elements of these names still in the tree, in document order."""
    return [tag for tag in soup.find_all(list(names)) if isinstance(tag, Tag)]


def _styles(tag: Tag) -> str:
    """The style of an element, squeezed: 'font-weight:700;'."""
    return str(tag.attrs.pop("style", "")).lower().replace(" ", "")


def _hide(soup: Tag) -> None:
    """What is not shown is not pasted."""
    for tag in soup.find_all(style=re.compile(r"display:\s*none|visibility:\s*hidden", re.I)):
        if not tag.decomposed:
            tag.decompose()


def _style(soup: Tag) -> None:
    """Bold, italic and struck words told by style become so by element, and the other way."""
    for tag in soup.find_all(True):
        style = _styles(tag)
        if tag.name in ("b", "strong") and re.search(r"font-weight:(?:normal|[1-5]00)", style):
            tag.name = "span"
        if tag.name not in ("span", "font"):
            continue
        if re.search(r"font-weight:(?:bold|[6-9]00)", style):
            tag.wrap(Tag(name="strong"))
        if "font-style:italic" in style:
            tag.wrap(Tag(name="em"))
        if "line-through" in style:
            tag.wrap(Tag(name="s"))
        tag.unwrap()


def _links(soup: Tag) -> None:
    """Links keep an address that leads somewhere, without what only counts visitors."""
    for tag in _all(soup, ["a"]):
        href = _address(str(tag.get("href", "")).strip())
        within = href.startswith("#")
        parent = tag.parent
        if within and parent is not None and parent.name == "sup":
            parent.decompose()
        elif within or not link(href):
            tag.unwrap()
        else:
            tag["href"] = href
            if tag.find(_BLOCKS):
                tag.string = tag.get_text(" ", strip=True)


def _address(href: str) -> str:
    """An address without tracking, safe to stand between round brackets."""
    if "?" in href:
        parts = urlsplit(href)
        asked = parse_qsl(parts.query, keep_blank_values=True)
        kept = [(name, value) for name, value in asked if not _TRACKING.fullmatch(name)]
        if len(kept) < len(asked):
            href = urlunsplit(parts._replace(query=urlencode(kept)))
    for sign in " ()<>\"'":
        href = href.replace(sign, f"%{ord(sign):02X}")
    return href


def _pictures(soup: Tag) -> None:
    """A picture that came along stays; one from the network becomes a link to it."""
    for tag in _all(soup, ["img"]):
        source = _address(str(tag.get("src", "")).strip())
        alt = re.sub(r"[\[\]\s]+", " ", str(tag.get("alt", ""))).strip()
        dot = {str(tag.get("width")), str(tag.get("height"))} & {"0", "1", "2"}
        if source.startswith("picture:") or (
            source.startswith(Scheme.FILE.prefix) and link(source)
        ):
            tag["alt"] = alt
        elif dot or not link(source):
            tag.replace_with(alt)
        elif tag.find_parent("a"):
            tag.replace_with(alt or "picture")
        else:
            away = Tag(name="a", attrs={"href": source})
            away.string = alt or "picture"
            tag.replace_with(away)


def _boxes(soup: Tag) -> None:
    """Tick boxes, whether drawn by a browser or as signs."""
    for tag in _all(soup, ["input"]):
        if tag.get("type") == "checkbox" and tag.find_parent("li"):
            tag.replace_with("[x] " if tag.has_attr("checked") else "[ ] ")
        else:
            tag.decompose()
    for item in _all(soup, ["li"]):
        first = next(iter(item.find_all(string=re.compile(r"\S"))), None)
        if first is not None and str(first).strip()[0] in _EMPTY_BOX + _TICKED_BOX:
            words = str(first).strip()
            box = "[ ] " if words[0] in _EMPTY_BOX else "[x] "
            first.replace_with(box + words[1:].lstrip())


def _lists(soup: Tag) -> None:
    """A list that stands beside items instead of in one moves into the item before it."""
    for tag in _all(soup, ["ul", "ol"]):
        before = tag.find_previous_sibling()
        if tag.parent is not None and tag.parent.name in ("ul", "ol") and before is not None:
            before.append(tag.extract())


def _tables(soup: Tag) -> None:
    """A table that only lays out a page is no table."""
    for tag in _all(soup, ["table"]):
        widest = max((len(row.find_all(["td", "th"])) for row in tag.find_all("tr")), default=0)
        if widest < 2 or tag.find("table"):
            for part in [*_all(tag, ["td", "th", "caption"]), *_all(tag, ["tr", "tbody", "thead"])]:
                part.name = "div"
            tag.name = "div"


def _terms(soup: Tag) -> None:
    """Terms and what they mean, as paragraphs with the term in bold."""
    for tag in _all(soup, ["dt", "dd"]):
        if tag.name == "dt" and not tag.find(_BLOCKS):
            bold = Tag(name="strong")
            for kid in list(tag.children):
                bold.append(kid.extract())
            tag.append(bold)
        tag.name = "p"


def _loud(soup: Tag) -> None:
    """Bold, italic and struck words: once each, never around blocks nor all through a heading."""
    for tag in _all(soup, _LOUD):
        tag.name = _LOUD[tag.name]
        words = tag.get_text(strip=True)
        heading = tag.find_parent(re.compile(r"h[1-6]")) if tag.name == "strong" else None
        through = heading is not None and heading.get_text(strip=True) == words
        if through or not words or tag.find_parent(tag.name) or tag.find(_BLOCKS):
            tag.unwrap()
    for tag in _all(soup, set(_LOUD.values())):
        _join(tag)


def _join(tag: Tag) -> None:
    """An element takes in the ones of its kind that follow it directly."""
    after = tag.next_sibling
    while isinstance(after, Tag) and after.name == tag.name:
        for kid in list(after.children):
            tag.append(kid.extract())
        after.extract()
        after = tag.next_sibling
