"""Times and temperatures in the short hand of kitchens: read, or asked about, and never read as something else."""

import pytest

from generator.importer.method.prose import find_measures

TIMES = {
    "Bake for 1h30.": "{bake 1 h 30 min}",
    "Bake for 1 h 30.": "{bake 1 h 30 min}",
    "Bake for 1h15min until golden.": "{bake 1 h 15 min}",
    "Bake for 1:30 hours.": "{bake 1 h 30 min}",
    "Bake for 1h30 - 1h45.": "{bake 1 h 30 min to 1 h 45 min}",
    "Bake for 1 h 30-40 min.": "{bake 1 h 30 min to 1 h 40 min}",
    "Bake for 90'.": "{bake 90 min}",
    "Bake for 20-25’.": "{bake 20-25 min}",
    "Let it rise for 1½ hrs.": "{rise 1½ h}",
    "Let it rise for an hour and a half.": "{rise 1 h 30 min}",
    "Let it rise for two and a half hours.": "{rise 2 h 30 min}",
    "Let it rise for an hour and a quarter.": "{rise 1 h 15 min}",
    "Let it rise for half an hour.": "{rise 30 min}",
    "Let it rest for a quarter of an hour.": "{rest 15 min}",
    "Let it rest for three quarters of an hour.": "{rest 45 min}",
    "Let it rest for ¾ of an hour.": "{rest 45 min}",
    "Let it rest for a half-hour.": "{rest 30 min}",
}


@pytest.mark.parametrize(("text", "told"), TIMES.items())
def test_a_time_in_any_spelling_is_read_whole(text: str, told: str) -> None:
    assert [each.text for each in find_measures(text)] == [told]
    assert not any(map(str.isdigit, text[find_measures(text)[0].end :]))


HEATS = {
    "Bake at 180 fan.": "{oven 180 C fan}",
    "Bake at fan 160.": "{oven 160 C fan}",
    "Bake at 160°fan.": "{oven 160 C fan}",
    "Bake at gas 6.": "{oven gas 6}",
    "Bake at Gas Mark 4.": "{oven gas 4}",
    "Bake at gas mark 1/2.": "{oven gas 1/2}",
    "Preheat the oven to 200C/180C fan/gas 6.": "{oven 200 C}",
    "Preheat the oven to 220C (200C fan) gas 7.": "{oven 220 C}",
}


@pytest.mark.parametrize(("text", "told"), HEATS.items())
def test_a_temperature_in_any_spelling_is_read_whole(text: str, told: str) -> None:
    (found,) = find_measures(text)
    assert found.text == told
    assert not any(map(str.isdigit, text[found.end :]))


@pytest.mark.parametrize(
    ("text", "number", "what"),
    [
        ("Put it into the oven at 350.", "350", "scale"),
        ("Bake at 350 until golden.", "350", "scale"),
        ("Preheat the oven to 180 (160 fan).", "180", "scale"),
        ("Bake at convection 325 until golden.", "325", "scale"),
        ("Oven 180, middle shelf.", "180", "scale"),
        ("Bake at 180 C for 20.", "20", "unit"),
        ("Knead for 8-10, then let it rise.", "8-10", "unit"),
        ("Knead for 8-10 until smooth.", "8-10", "unit"),
    ],
)
def test_a_number_without_scale_or_unit_is_asked_about(text: str, number: str, what: str) -> None:
    asked = [each.question for each in find_measures(text) if each.question]
    assert [f"“{number}” names no {what}" in each for each in asked] == [True]


@pytest.mark.parametrize(
    "text",
    [
        "Cut it into pieces of 350 g and bake them.",
        "Bake the rolls for 12 guests.",
        "Heat 350 ml milk, then add 100 g sugar.",
        "It was the cake of the 70's.",
        "Write 'Baking 101' on it.",
        "Roll it out for a 9 by 13 tin.",
    ],
)
def test_other_numbers_are_no_times_and_no_temperatures(text: str) -> None:
    assert [each for each in find_measures(text) if each.kind != "length"] == []
