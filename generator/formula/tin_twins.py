"""Which usual tin a recipe's own tin is, so that a tin is one thing in every list."""

from fractions import Fraction

from generator.formula.tin_text import read_shape
from generator.formula.tins import By, TinShape, factor_between
from generator.formula.usual_tins import USUAL_TINS, Offer, UsualTin


def usual_twin(tin: TinShape) -> UsualTin | None:
    """The usual tin of the same size, however deep; None for several tins, or for one of another size."""
    if tin.count != 1:
        return None
    by: By = "depth" if tin.kind in ("round", "square", "rectangle") or tin.volume is None else "fill"
    for usual in USUAL_TINS.get(tin.kind, ()):
        for name in (usual.metric, usual.inches):
            shape = read_shape(name)[0]
            if (
                shape is not None
                and shape.kind == tin.kind
                and factor_between(tin, shape, by=by) == Fraction(1)
            ):
                return usual
    return None


def both_names(offer: Offer) -> tuple[str, str]:
    """The metric name of an offered tin and its name in inches, "" where it has none."""
    if not offer.other_name or offer.name.endswith("cm"):
        return offer.name, offer.other_name
    return offer.other_name, offer.name


def muffin_name(tin: TinShape) -> str:
    """A muffin tin goes by the number of its cups."""
    return f"muffin {tin.count} cups"
