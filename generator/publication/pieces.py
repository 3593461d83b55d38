"""Leaves as they are kept for the next make: in pieces, so that a correction reads only those that it reaches.

Of every recipe a `Tie` is at hand: what it is made with, and marks of what is known of it. Its leaf lies in a piece
with those of its neighbours in the list of names, what the feeds say of it in another.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace

from generator.build.cache import Cache
from generator.build.packing import digest, unpressed
from generator.build.task import Kept, kept
from generator.build.works import Gone
from generator.publication.leaves import Leaf
from generator.render.feeds.entry import Entry

AT_ONCE = 50
"""Leaves in one piece."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Tie:
    """`listed` is the mark of all that lists, checks and other recipes know of this one, `entry` of what the feeds
    say of it, `whole` of these and of all that its own outputs are made of."""

    name: str
    components: tuple[str, ...]
    packs: tuple[str, ...]
    listed: str
    entry: str
    whole: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """The recipes in it, by name; their leaves without entries, and their entries."""

    names: tuple[str, ...]
    leaves: Kept
    entries: Kept


def tie_of(leaf: Leaf) -> Tie:
    about = (leaf.short, leaf.named, leaf.components, leaf.packs, leaf.listed, leaf.standing, leaf.footprint)
    listed, entry = digest(about), digest(leaf.entry)
    sizes = leaf.sizes.mark if leaf.sizes else ""
    whole = digest(listed, entry, leaf.view.mark, leaf.data.mark, leaf.tag.mark, sizes)
    return Tie(
        name=leaf.name,
        components=leaf.components,
        packs=leaf.packs,
        listed=listed,
        entry=entry,
        whole=whole,
    )


class Leaves(Mapping[str, Leaf]):
    """The leaves of a publication: those that were made now, and the others, each piece read when it is asked for.

    Gone: the cache has lost a piece.
    """

    def __init__(self, pieces: Iterable[Piece], fresh: Mapping[str, Leaf], cache: Cache) -> None:
        self._pieces = tuple(pieces)
        self._fresh = fresh
        self._cache = cache
        self._home = {name: piece for piece in self._pieces for name in piece.names}
        self._leaves: dict[str, Leaf] = {}
        self._entries: dict[str, Entry | None] = {}

    def __getitem__(self, name: str) -> Leaf:
        if name in self._fresh:
            return self._fresh[name]
        if name not in self._leaves:
            piece = self._home[name]
            leaves: tuple[Leaf, ...] = read_kept(piece.leaves, self._cache)  # type: ignore[assignment]
            self._leaves |= {leaf.name: leaf for leaf in leaves}
        return self._leaves[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._home)

    def __len__(self) -> int:
        return len(self._home)

    def entry(self, name: str) -> Entry | None:
        """What the feeds say of a bake; the leaf of one that was known says nothing of it."""
        if name in self._fresh:
            return self._fresh[name].entry
        if name not in self._entries:
            piece = self._home[name]
            entries: tuple[Entry | None, ...] = read_kept(piece.entries, self._cache)  # type: ignore[assignment]
            self._entries |= dict(zip(piece.names, entries, strict=True))
        return self._entries[name]

    def pieces(self) -> tuple[Piece, ...]:
        """Those that hold these leaves, kept; what has not changed is not written again."""
        return tuple(
            self._again(piece) if any(name in self._fresh for name in piece.names) else piece
            for piece in self._pieces
        )

    def _again(self, piece: Piece) -> Piece:
        leaves = tuple(self[name] for name in piece.names)
        return piece_of(leaves, tuple(self.entry(name) for name in piece.names), self._cache)


def pieces_of(leaves: Mapping[str, Leaf], cache: Cache) -> tuple[Piece, ...]:
    """All leaves in pieces, in the order of their names."""
    if isinstance(leaves, Leaves):
        return leaves.pieces()
    names = sorted(leaves)
    some = (names[start : start + AT_ONCE] for start in range(0, len(names), AT_ONCE))
    return tuple(
        piece_of(tuple(leaves[name] for name in each), tuple(leaves[name].entry for name in each), cache)
        for each in some
    )


def piece_of(leaves: tuple[Leaf, ...], entries: tuple[Entry | None, ...], cache: Cache) -> Piece:
    bare = tuple(leaf if leaf.entry is None else replace(leaf, entry=None) for leaf in leaves)
    names = tuple(leaf.name for leaf in leaves)
    return Piece(names=names, leaves=put(bare, cache), entries=put(entries, cache))


def put(value: object, cache: Cache) -> Kept:
    """Keeps a value and forgets it; where it cannot be kept, whoever asks for it finds it gone."""
    made = kept(value)
    cache.put(made.mark, made.content or b"")
    return replace(made, content=None)


def read_kept(of: Kept, cache: Cache) -> object:
    """Gone: the cache has lost it."""
    found = cache.get(of.mark)
    if found is None:
        raise Gone(of.mark)
    return unpressed(found)
