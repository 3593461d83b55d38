"""A thing known by being itself: for remembering what was worked out of it without comparing all that it holds."""

from typing import Generic, TypeVar

Thing = TypeVar("Thing")


class Same(Generic[Thing]):
    """Equal only to a `Same` of the very same object, which it keeps alive."""

    __slots__ = ("thing",)

    def __init__(self, thing: Thing) -> None:
        self.thing = thing

    def __hash__(self) -> int:
        return id(self.thing)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Same) and self.thing is other.thing
