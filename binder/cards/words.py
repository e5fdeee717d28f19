"""How a name is compared: letters folded, articles left out. Shared by titles and shorthand."""

import unicodedata

_ARTICLES = ("the ", "le ", "la ", "les ", "l'", "il ", "lo ", "gli ", "el ", "los ", "las ")
_PLAIN = str.maketrans({"’": "'", "‘": "'", "`": "'", "-": " ", "‐": " ", "–": " ", "_": " "})


def fold(text: str) -> str:
    """Small letters without accents, straight apostrophes, single spaces, no hyphens."""
    if text.isascii():
        return " ".join(text.lower().translate(_PLAIN).split())
    parts = unicodedata.normalize("NFKD", text.casefold().translate(_PLAIN))
    letters = "".join(each for each in parts if not unicodedata.combining(each))
    return " ".join(letters.casefold().split())


def bare(name: str) -> str:
    """A folded name without its leading article: 'the star' -> 'star'."""
    for article in _ARTICLES:
        if name.startswith(article) and len(name) > len(article):
            return name[len(article) :]
    return name
