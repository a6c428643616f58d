"""What people did: the tables, and the only ways to write and read them.

This room knows no lesson files and no requests. Its functions take a session first and plain or
frozen values after it; the time is always one of them. They write, and never commit: whoever
called them commits once.
"""

from . import (
    attempts,
    crews,
    cups,
    database,
    delays,
    evidence,
    fading,
    faults,
    passwords,
    people,
    practice,
    progress,
    recount,
    roofs,
    schema,
    signins,
    statements,
    stuck,
    tallies,
    texts,
)
from .database import db, writing

__all__ = [
    "attempts",
    "crews",
    "cups",
    "database",
    "db",
    "delays",
    "evidence",
    "fading",
    "faults",
    "passwords",
    "people",
    "practice",
    "progress",
    "recount",
    "roofs",
    "schema",
    "signins",
    "statements",
    "stuck",
    "tallies",
    "texts",
    "writing",
]
