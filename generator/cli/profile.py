"""Where the time of a make went, as a table in the terminal."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from generator.publication.clock import Profile


def as_table(profile: "Profile") -> str:
    """A line for each stage, then the slowest files; seconds are summed over all processes."""
    lines = [f"{'stage':<18}{'in':>8}{'made':>8}{'seconds':>10}"]
    lines += [f"{row.stage:<18}{row.went_in:>8}{row.made:>8}{row.seconds:>10.2f}" for row in profile.rows]
    if profile.slowest:
        lines += ["", "slowest"]
        lines += [f"{seconds:>8.2f} s  {title}" for title, seconds in profile.slowest]
    return "\n".join(lines)
