"""Files handed out by the program: written whole or not at all."""

from pathlib import Path

from binder.errors import CanMend


def write_whole(data: bytes, out: Path) -> None:
    """Write `data` to `out` in one go; an older file stays as it was when that fails."""
    half = out.with_name(f".{out.name}.part")
    try:
        half.write_bytes(data)
        half.replace(out)
    except OSError as error:
        half.unlink(missing_ok=True)
        raise CanMend(f"“{out}” could not be written ({error.strerror}).") from error
