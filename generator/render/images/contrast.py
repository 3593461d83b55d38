"""How well an ink stands out from what lies under it, by WCAG 2.2: relative luminance and contrast ratio."""

from PIL import Image

LEAST = 4.5
Colour = tuple[int, int, int]


def ratio(one: Colour, other: Colour) -> float:
    """WCAG 2.2, "contrast ratio": from 1 to 21."""
    dark, light = sorted((luminance(one), luminance(other)))
    return (light + 0.05) / (dark + 0.05)


def luminance(colour: Colour) -> float:
    """WCAG 2.2, "relative luminance" of an sRGB colour."""
    red, green, blue = (_linear(value / 255) for value in colour)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def _linear(value: float) -> float:
    return value / 12.92 if value <= 0.04045 else ((value + 0.055) / 1.055) ** 2.4


def _extremes(channel: Image.Image) -> tuple[int, int]:
    seen = [value for value, count in enumerate(channel.histogram()) if count]
    return seen[0], seen[-1]


def least_ratio(ground: Image.Image, ink: Colour) -> float:
    """The ratio of the ink to the pixel of an RGB picture from which it stands out least, or less: a lower bound.

    Luminance grows with each channel, so that no pixel is darker than the least of all channels together, nor
    lighter than the most.
    """
    red, green, blue = (_extremes(ground.getchannel(name)) for name in ("R", "G", "B"))
    darkest, lightest = (luminance((red[end], green[end], blue[end])) for end in (0, 1))
    own = luminance(ink)
    if darkest <= own <= lightest:
        return 1.0
    nearest = lightest if own > lightest else darkest
    dark, light = sorted((own, nearest))
    return (light + 0.05) / (dark + 0.05)
