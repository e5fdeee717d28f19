"""Rich text copied from elsewhere, as clean Markdown.

nh3 throws away what has no place in a leaf, BeautifulSoup mends what browsers and word
processors write, markdownify turns the rest into Markdown of our dialect. Everything heavy is
imported at the first paste.
"""

import base64
import binascii
import re
from html import unescape
from typing import NamedTuple

LONGEST = 1_000_000
"""Characters of HTML, pictures not counted, beyond which only the plain words are kept."""

_DATA = re.compile(r"data:(image/(?:png|jpeg|gif|webp|bmp));base64,([A-Za-z0-9+/=%\s]+)", re.I)
_FRAGMENT = re.compile(r"<!--\s*StartFragment\s*-->(.*)<!--\s*EndFragment\s*-->", re.DOTALL)
_UNSEEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\N{SOFT HYPHEN}\N{ZERO WIDTH SPACE}\N{WORD JOINER}"
    "\N{ZERO WIDTH NO-BREAK SPACE}]"
)


class Picture(NamedTuple):
    """A picture that came inside the pasted text."""

    placeholder: str
    """What stands for it in the Markdown; to be replaced by `file:UUID` once it is stored."""
    media_type: str
    """As 'image/png'."""
    data: bytes


class Pasted(NamedTuple):
    """What was pasted."""

    text: str
    """Markdown, without empty lines at its ends."""
    pictures: list[Picture]
    """In the order they stand in the text; one that stands twice is here once."""


def from_html(html: str) -> Pasted:
    """Clean Markdown from HTML of any kind, as a clipboard holds it.

    Headings, lists, tables, quotes, links, code, bold, italic and struck words stay. A picture
    from the network becomes a plain link to its address. Never raises on any text.
    """
    fragment = _FRAGMENT.search(html)
    pictures = _Pictures()
    bare = _DATA.sub(pictures.take, fragment[1] if fragment else html)
    bare = _UNSEEN.sub("", bare).replace("\N{NO-BREAK SPACE}", " ").replace("&nbsp;", " ")
    from binder.page.markup import soup

    if len(bare) > LONGEST:
        return Pasted(_words(bare), [])
    try:
        text = soup.markdown(bare)
    except RecursionError:
        return Pasted(_words(bare), [])
    return Pasted(text, [found for found in pictures.found if found.placeholder in text])


class _Pictures:
    """Takes pictures out of the HTML, leaving a placeholder for each."""

    def __init__(self) -> None:
        self.found: list[Picture] = []
        self.seen: dict[bytes, str] = {}

    def take(self, match: re.Match[str]) -> str:
        """The placeholder for one picture; what cannot be decoded leaves nothing."""
        written = re.sub(r"\s|%0[AD]|%20", "", match[2], flags=re.I)
        try:
            data = base64.b64decode(written.replace("%2B", "+").replace("%2F", "/"), validate=True)
        except binascii.Error:
            return ""
        if data not in self.seen:
            self.seen[data] = f"picture:{len(self.found) + 1:04}"
            self.found.append(Picture(self.seen[data], match[1].lower(), data))
        return self.seen[data]


def _words(html: str) -> str:
    """Nothing but the words, a line for each block."""
    import nh3

    parted = re.sub(r"<(?:br|/p|/div|/li|/tr|/h\d)\b", r"\n\g<0>", html, flags=re.I)
    lines = unescape(nh3.clean(parted, tags=set())).split("\n")
    return "\n".join(line for line in (" ".join(line.split()) for line in lines) if line)
