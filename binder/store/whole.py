"""Files handed out by the program: written whole or not at all, and never over something else.

What lies there already is replaced only where it is a file of the same kind as the new one, told by
how it begins: never a binder or another database, a folder, a link, a device, or a stranger's text.
"""

from __future__ import annotations

import os
import stat
import tempfile
from contextlib import suppress
from pathlib import Path

from binder.errors import CanMend

_BINDER = ".ringbound"
_BEGINS = (
    (b"%PDF-", "PDF"),
    (b"\x89PNG\r\n\x1a\n", "PNG"),
    (b"\xff\xd8\xff", "JPEG"),
    (b"GIF8", "GIF"),
    (b"RIFF", "WebP"),
    (b"BEGIN:VCALENDAR", "calendar"),
    (b'{\n "kind": "ringbound spread"', "spread"),
    (b"@", "BibTeX"),
    (b"[", "CSL-JSON"),
)
"""How the kinds of file begin that the program hands out (common practice)."""
_HEAD = 64
_OTHER = "“{out}” is not a file of that kind, so it was left alone; choose another name."
_THERE = "“{out}” is there already; choose another name{or_else}."
OR_REPLACE = ", or add --replace to write over it"


def kind_of(head: bytes) -> str:
    """What a file is by its first bytes; '' for what the program does not hand out."""
    plain = head.lstrip(b"\xef\xbb\xbf \t\r\n")
    return next((kind for begins, kind in _BEGINS if plain.startswith(begins)), "")


def named(path: Path, suffix: str) -> Path:
    """The path with the suffix of its kind: what was typed may have none, or another kind's."""
    return path if path.suffix.casefold() == suffix else path.with_name(f"{path.name}{suffix}")


def meant(typed: Path, suffix: str, *also: str) -> Path:
    """Where somebody means to save who typed a path: with the suffix of its kind, unless it has it
    or one of `also`.

    CanMend where it cannot be there, or where a file stands there that nobody was asked about.
    """
    full = typed if typed.suffix.lower() in also else named(typed, suffix)
    must_be_free(full, replace=full == typed)
    return full


def must_be_free(out: Path, *, replace: bool = True, or_else: str = "") -> None:
    """CanMend where nothing may be written to `out`, whatever it is; a file stands only where it
    may be replaced.
    """
    if out.suffix.casefold() == _BINDER:
        raise CanMend(f"“{out}” is the name of a binder; choose one that ends as its kind does.")
    try:
        found = out.lstat()
    except FileNotFoundError:
        return
    except OSError as error:
        raise CanMend(f"“{out}” could not be written ({error.strerror}).") from error
    if not stat.S_ISREG(found.st_mode):
        raise CanMend(_OTHER.format(out=out))
    if not replace:
        raise CanMend(_THERE.format(out=out, or_else=or_else))


def write_whole(data: bytes, out: Path, *, replace: bool = True, or_else: str = "") -> None:
    """Write `data` to `out` in one go; an older file stays as it was when that fails.

    CanMend where something else lies there, or anything and it may not be replaced.
    """
    must_be_free(out, replace=replace, or_else=or_else)
    with suppress(FileNotFoundError):
        lies = _head(out)
        kind = kind_of(data[:_HEAD])
        if lies and (not kind or kind != kind_of(lies)):
            raise CanMend(_OTHER.format(out=out))
    write_own(data, out)


def _head(path: Path) -> bytes:
    try:
        with path.open("rb") as file:
            return file.read(_HEAD)
    except FileNotFoundError:
        raise
    except OSError as error:
        raise CanMend(f"“{path}” could not be written ({error.strerror}).") from error


def write_own(data: bytes, out: Path) -> None:
    """Write a file that is the program's own, and in a place of its own, in one go."""
    half = None
    try:
        number, name = tempfile.mkstemp(prefix=".ringbound-", suffix=".part", dir=out.parent)
        half = Path(name)
        with os.fdopen(number, "wb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        _as_others(half)
        half.replace(out)
    except OSError as error:
        if half is not None:
            half.unlink(missing_ok=True)
        raise CanMend(f"“{out}” could not be written ({error.strerror}).") from error


def _as_others(path: Path) -> None:
    """The rights of a new file of this person's, where a file made for a while has fewer."""
    now = os.umask(0)
    os.umask(now)
    path.chmod(0o666 & ~now)
