"""The net weight of one finished piece, in both units."""

from fractions import Fraction
from math import floor

from generator.declaration.regions import region_named
from generator.present.amounts import pounds_and_ounces
from generator.present.tag_views import NetWeight
from generator.wording.speech import say

OUNCE = Fraction("28.349523125")  # grams, exactly (NIST SP 811)


def net_weight(grams: Fraction, region: str) -> NetWeight:
    """Never more than there is: tenths of an ounce and whole grams, both rounded down.

    Of 681 g the ounces come out whole: 1 lb 8 oz, which is 680 g. So that both figures say the same (21 CFR 101.7)
    the grams follow the ounces, by one gram at the most.
    """
    whole = floor(grams)
    imperial = pounds_and_ounces(Fraction(whole))
    ounces = floor(Fraction(whole) / OUNCE)
    alike = floor(ounces * OUNCE + Fraction(1, 2))
    if alike == whole - 1 and pounds_and_ounces(ounces * OUNCE) == imperial:
        whole = alike
    metric = say("{weight} g", weight=whole)
    if region_named(region).metric_first:
        return NetWeight(lead=say("Net weight"), large=metric, beside=f"({imperial})", grams=whole)
    return NetWeight(lead=say("Net wt"), large=f"{imperial} ({metric})", grams=whole)
