"""One piece of rendering that can be done by itself."""

from collections.abc import Callable
from dataclasses import dataclass

from generator.render.output import Product


@dataclass(frozen=True, slots=True, kw_only=True)
class Task:
    """`work` makes the products; `title` names them to a person who waits.

    With more than one worker `work` travels to another process: a module's own function, or a
    `functools.partial` of one over plain data.
    """

    title: str
    work: Callable[[], tuple[Product, ...]]
