"""What a recipe says of the machine and of its dough's temperature: more than the site says, or other."""

from fractions import Fraction

from generator.formula.intake.collect import Collector
from generator.formula.machine_kind import Machine
from generator.measure.number import Range
from generator.measure.temperature import Temperature
from generator.source.document import Mapping
from generator.source.machine import read_dough_temperature, read_machine

MACHINE_KEYS = ("machine", "dough_temperature")


def read_own_machine(front: Mapping, collector: Collector) -> Machine | None:
    """The recipe's `machine:`; None where it has none."""
    stated = collector.value(read_machine(front.get("machine")))
    if stated is None:
        return None
    rest = Range(Fraction(stated.rest[0]), Fraction(stated.rest[1])) if stated.rest else None
    return Machine(order=stated.order, rest=rest, add_ins=stated.add_ins, pan=stated.pan)


def read_own_dough_temperature(front: Mapping, collector: Collector) -> Temperature | None:
    """The recipe's `dough_temperature:`; None where it has none."""
    stated = collector.value(read_dough_temperature(front.get("dough_temperature")))
    if stated is None:
        return None
    return Temperature(stated=stated.scale, low=stated.value, high=stated.value, fan=False)
