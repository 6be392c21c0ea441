/** Words of danger that are said of plants, tools and crops. */
export const PLANT_TALK: readonly string[] = [
  'my plant looks a bit sick and the roots are brown',
  'I cut the top off my leylandii with a chainsaw, will it grow back',
  'found them on the floor not moving, lots of ladybirds',
  'can I dig the beet roots for our dinner tonight',
  'the soil is soaked through so the mower sinks in',
  'segments of my cactus come off in my hand, quite soggy',
  'What is the simplest, quickest and least toxic way to get rid of mint for good?',
  'Is a glyphosate weed killer safe to use in a vegetable garden?',
  'I have only been in this house for a year and the flowers on the bush are poor',
  'the bindweed is back and I just want to kill it',
  'ivy all over the wall, I want to kill it all',
  'I do not want to kill it with kindness, so how much can come out in one go',
  'the azalea gets no rain there, I am thinking of taking it out and putting it by the stream',
]
