"""What a page offers beside the recipe as written: other sizes, the other measure first, the other heat first."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True, kw_only=True)
class OfferView:
    """The recipe in one size.

    `kind` is written, times or tin; `id` is the number or the tin that gives the same with `tinleaf show`.
    `title` names the size ("2 ×", "round 20 cm (8 in)"), `scale` says it in full ("" for the recipe as written).
    `by_weight` and `by_volume` hold the words of each of `SizesView.places`, with that measure first.
    """

    id: str
    kind: str
    title: str
    scale: str
    notes: tuple[str, ...]
    by_weight: tuple[str, ...]
    by_volume: tuple[str, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SizesView:
    """Every word of a page that may change, by the place it stands at (`present/spots.py` names the places).

    The first of `offers` is the recipe as written; `first` is the measure that the page puts first by itself.
    Each of `heats` is worded as written, with °F first and with °C first.
    """

    first: str
    places: tuple[str, ...]
    offers: tuple[OfferView, ...]
    heat_places: tuple[str, ...]
    heats: tuple[tuple[str, str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class OvenView:
    """An oven temperature of the recipe for other ovens; a cell is "" where there is nothing to say."""

    written: str
    plain: str
    fan: str
    gas: str
