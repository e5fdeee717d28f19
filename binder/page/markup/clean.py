"""What may stay in the HTML of a leaf: short lists, and everything else goes.

Import this module only when something is rendered: it loads nh3.
"""

import re

import nh3

from binder.page.address import WEB, WRITTEN, Address, Scheme

_UUID = "[0-9a-f]{8}-?(?:[0-9a-f]{4}-?){3}[0-9a-f]{12}"
_WEB = r"[^\s\x00-\x20\"<>\\]+"
_MAY_FOLLOW = {
    Scheme.CARD: re.compile(r"(?:major|wands|cups|swords|pentacles)-\d\d", re.IGNORECASE),
    Scheme.LEAF: re.compile(_UUID, re.IGNORECASE),
    Scheme.SOURCE: re.compile(r"[^\s\x00-\x20\"'<>\\]+"),
    Scheme.FILE: re.compile(_UUID, re.IGNORECASE),
    Scheme.HTTP: re.compile(f"//{_WEB}"),
    Scheme.HTTPS: re.compile(f"//{_WEB}"),
    Scheme.MAILTO: re.compile(_WEB),
}
"""What may come after each scheme that somebody may write."""
_NOTE = re.compile(r"#fn(?:ref\d*)?:\d+", re.IGNORECASE)
_ID = re.compile(r"fn(?:ref\d*)?:\d+")
_START = re.compile(r"\d{1,9}")
_CLASSES = frozenset({"footnote", "footnote-ref", "footnote-backref"})
_ALIGN = frozenset({"left", "center", "right"})

_UNSEEN = dict.fromkeys((0x00, 0x02, 0x03), "\N{REPLACEMENT CHARACTER}")


def visible(text: str) -> str:
    """The text with the three control characters that rendering uses itself made visible."""
    return text.translate(_UNSEEN) if any(c in text for c in "\x00\x02\x03") else text


def cleaned(html: str) -> str:
    """The HTML with nothing in it but the tags, attributes and addresses allowed."""
    return _CLEANER.clean(html)


def link(address: str) -> str | None:
    """An address a link may have, its scheme in small letters, or None."""
    if _NOTE.fullmatch(address):
        return address
    known = Address.parse(address)
    may_follow = _MAY_FOLLOW.get(known.scheme) if known else None
    return str(known) if known and may_follow and may_follow.fullmatch(known.rest) else None


def _picture(address: str) -> str | None:
    """The address of a kept file in small letters, or None."""
    found = link(address)
    return found.lower() if found and found.startswith(Scheme.FILE.prefix) else None


def _attribute(tag: str, name: str, value: str) -> str | None:
    """One attribute judged by itself: its value, or None to drop it."""
    if name == "href":
        return link(value.strip())
    if name == "src":
        return _picture(value.strip())
    if name == "class":
        return value if value in _CLASSES else None
    if name == "id":
        return value if _ID.fullmatch(value) else None
    if name == "start":
        return value if _START.fullmatch(value) else None
    if name == "align":
        return value if value in _ALIGN else None
    return value


_TAGS = (
    "p h1 h2 h3 h4 h5 h6 ul ol li blockquote table thead tbody tr th td pre hr br div"
    " a img em strong s code sup sub small b i del strike"
)
_GONE = "script style svg math iframe noscript template object noembed noframes"
_CLEANER = nh3.Cleaner(
    tags=set(_TAGS.split()),
    clean_content_tags=set(_GONE.split()),
    attributes={
        "a": {"href", "title", "class"},
        "img": {"src", "alt", "title"},
        "ol": {"start"},
        "th": {"align"},
        "td": {"align"},
        "sup": {"id"},
        "li": {"id"},
        "div": {"class"},
    },
    attribute_filter=_attribute,
    link_rel=None,
    url_schemes={*map(str, (*WRITTEN, *WEB))},
)
