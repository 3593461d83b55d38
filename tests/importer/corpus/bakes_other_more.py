"""The pie, the rolls and the birthday cake of the other hand."""

from tests.importer.corpus.truth import Bake, line, said

MORE_OF_OTHERS = (
    Bake(
        title="Deep apple pie",
        lead="A proper lid, sharp apples, not much sugar.",
        parts=(
            (
                "crust",
                (
                    line("2.5 cup = 315 g", "all-purpose flour", has="wheat"),
                    said("1 tablespoon sugar", "1 tbsp", "sugar"),
                    line("1 tsp", "salt"),
                    line("8 oz = 225 g", "unsalted butter", "cold and cubed", has="milk"),
                    said("6-8 tbsp ice water", "6..8 tbsp", "ice water"),
                ),
            ),
            (
                "filling",
                (
                    said(
                        "3 lb (1.4 kg) apples, peeled and sliced",
                        "3 lb = 1.4 kg",
                        "apples",
                        "peeled and sliced",
                    ),
                    line("0.5 cup", "light brown sugar"),
                    line("3 tbsp", "cornstarch"),
                    line("1.5 tsp", "cinnamon"),
                    said("⅛ tsp nutmeg, freshly grated", "0.125 tsp", "nutmeg", "freshly grated"),
                    line("1 tbsp", "lemon juice"),
                ),
            ),
            (
                "to finish",
                (
                    line("1", "egg", "beaten", has="egg"),
                    said("Coarse sugar, for sprinkling", "", "Coarse sugar"),
                ),
            ),
        ),
        steps=(
            "Rub the butter into the flour, sugar and salt, bind it with the ice water and chill for 1 hour.",
            "Toss the apples with everything else for the filling and let them rest for 30 minutes.",
            "Roll out two thirds of the dough and line a 9-inch pie dish. Heap in the apples and put on the lid.",
            "Brush with the beaten egg and sprinkle with coarse sugar.",
            "Bake at 425°F for 20 minutes, then at 375°F for 40 to 45 minutes.",
            "Cool for 4 hours or the filling will run.",
        ),
        times=(
            ("chill", 60, 60),
            ("rest", 30, 30),
            ("bake", 20, 20),
            ("bake", 40, 45),
            ("cool", 240, 240),
        ),
        heats=(("oven", 425, "F"), ("oven", 375, "F")),
        makes="8 slices",
        keeps="2 days at room temperature",
    ),
    Bake(
        title="Potato dinner rolls",
        lead="Leftover mash makes them soft for days.",
        parts=(
            (
                "",
                (
                    line("250 g", "potatoes", "boiled and riced"),
                    said("120 ml milk or 120 ml oat drink", "120 ml", "milk", has="milk"),
                    line("1", "egg", size="medium", has="egg"),
                    line("40 g", "butter", "melted, plus 10 g for brushing", has="milk"),
                    line("25 g", "sugar"),
                    line("450 g", "bread flour", has="wheat"),
                    line("8 g", "salt"),
                    line("15 g", "fresh yeast", "crumbled"),
                ),
            ),
        ),
        steps=(
            "Warm the milk to 35 °C and dissolve the fresh yeast and sugar in it.",
            "Add the rest and mix on low for 3 minutes, then knead on medium for 7 minutes.",
            "Let the dough rise for 1 to 1 1/2 hours.",
            "Form 15 rolls, set them close together in a 23 x 33 cm tin and let rise for 35 minutes.",
            "Bake at 190 °C / 170 °C fan for 22 minutes and brush with butter while hot.",
        ),
        times=(("mix", 3, 3), ("knead", 7, 7), ("rise", 60, 90), ("rise", 35, 35), ("bake", 22, 22)),
        heats=(("other", 35, "C"), ("oven", 190, "C")),
        makes="15 rolls",
        keeps="3 days; they freeze well",
    ),
    Bake(
        title="Carrot cake with walnut and cream cheese",
        lead="Asked for at every birthday since 2011.",
        parts=(
            (
                "cake",
                (
                    said(
                        "2 cups (250 g) all-purpose flour, spooned and leveled",
                        "2 cup = 250 g",
                        "all-purpose flour",
                        "spooned and leveled",
                        has="wheat",
                    ),
                    line("2 tsp", "baking powder"),
                    line("0.5 tsp", "salt"),
                    line("2 tsp", "ground cinnamon"),
                    line("4", "eggs", size="large", has="egg"),
                    line("1.5 cup = 300 g", "light brown sugar"),
                    said("1 cup vegetable oil", "1 cup", "vegetable oil"),
                    said("3 cups grated carrots (about 4 large)", "3 cup", "grated carrots"),
                    line("1 cup = 115 g", "walnuts", "chopped", has="walnut"),
                ),
            ),
            (
                "frosting",
                (
                    said(
                        "2 8-oz blocks cream cheese, softened",
                        "16 oz",
                        "cream cheese",
                        "softened",
                        has="milk",
                    ),
                    line("0.5 cup = 113 g", "unsalted butter", "softened", has="milk"),
                    line("2 cup = 240 g", "powdered sugar"),
                    line("1 tsp", "vanilla extract"),
                ),
            ),
        ),
        steps=(
            "Heat the oven to 350°F and line two 8-inch round tins.",
            "Whisk the flour, baking powder, salt and ground cinnamon together.",
            "Beat the eggs, light brown sugar and vegetable oil for 3 minutes, then fold in the flour.",
            "Stir in the grated carrots and walnuts and divide the batter between the tins.",
            "Bake for 32 to 36 minutes and let cool for 1 hour.",
            "Beat everything for the frosting until smooth, fill the cake and cover it.",
            "Chill for at least 30 minutes before cutting.",
        ),
        times=(("mix", 3, 3), ("bake", 32, 36), ("cool", 60, 60), ("chill", 30, 30)),
        heats=(("oven", 350, "F"),),
        makes="14 slices",
        keeps="5 days in the fridge",
    ),
)
