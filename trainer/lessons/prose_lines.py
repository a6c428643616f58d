"""The lines of a lesson that are prose: what stands in a fenced block is somebody else's."""

from collections.abc import Iterable, Iterator

_FENCE = "```"


def outside_fences(lines: Iterable[str]) -> Iterator[tuple[str, bool]]:
    """Yield each line, and whether it is prose; a fence and all in it are not.

    A fence that names what it holds opens and never closes: what runs on into the next block
    is no prose, and is refused as unclosed before anything in it is read.
    """
    inside = False
    for line in lines:
        fence = line.lstrip().startswith(_FENCE)
        yield line, not (inside or fence)
        if fence:
            inside = not inside or line.strip().strip("`") != ""


def prose_of(text: str) -> str:
    """Return a lesson's text with every line that is no prose left empty.

    The lines keep their numbers. Front matter is no prose either.
    """
    front = text.startswith("+++")
    kept: list[str] = []
    for number, (line, prose) in enumerate(outside_fences(text.splitlines())):
        kept.append(line if prose and not front else "")
        front = front and not (number and line.rstrip() == "+++")
    return "\n".join(kept)
