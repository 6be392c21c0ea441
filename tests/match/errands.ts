/**
 * What people also write to a helpline: errands, small talk, the weather, other languages, slips of the hand; and short
 * questions about plants that could be taken for them. The first 40 of both and the last 30 of both were each read once
 * before anything was mended on them; the first, and the 145 errands beside them, are what the curve of
 * `src/match/scope.ts` is fitted to. Invented by us; the judgements are common practice, no source.
 */

/** Errands used for fitting. */
export const ERRANDS: readonly string[] = [
  'are you open on sunday', 'what are your hours over christmas', 'how much does a bag of compost cost these days',
  'do you have any wheelbarrows in stock', 'my strimmer wont start, i pulled the cord twenty times',
  'the ride on mower has a flat tyre, who can mend it', 'can i book a table in the tea room for four', 'is there parking for a coach',
  'what is the wifi password', 'will it rain tomorrow in eastmere', 'how hot is it going to be at the weekend', 'whats the weather doing on thursday',
  'asdf jkl; qwe zxc', 'blorp fnarg wibble', 'hhhhhhhhhhhhh', '1234 5678', 'bonjour, quels sont vos horaires',
  'meine tomaten sind krank was soll ich tun', 'ciao come stai oggi', 'dzień dobry, mam pytanie o ogród', 'hello how are you today',
  'tell me a joke about gardeners', 'are you a robot or a real person', 'thanks that\'s all, bye', 'who won the match last night',
  'i need to reset my password, the link does not work', 'where is my order, it was meant to come on tuesday',
  'can i return a garden chair without the receipt', 'please unsubscribe me from the newsletter', 'how do i get a refund on a gift voucher',
  'do you deliver flowers to the hospital', 'i want a bunch of roses for my wife\'s birthday, how much',
  'looking for someone to cut our grass every two weeks', 'how much would you charge to take down a hedge', 'my car has a scratch on the door',
  'can you recommend a good plumber', 'what time is the garden tour', 'have you any jobs going for school leavers', 'write a poem about my cat',
  'my phone screen is cracked, can you fix it', 'what are your opening hours on bank holidays', 'are you closed on monday', 'when do you open',
  'do you open late on fridays', 'what time does the cafe close', 'how much is entry for a family', 'what does it cost to get in',
  'do you have a discount for pensioners', 'is there a charge for parking', 'cheapest fence panels please', 'do you sell paint',
  'have you got any barbecue gas', 'do you stock dog food', 'where can i buy a spade', 'i want to order a shed', 'my parcel has not turned up',
  'track my order', 'i was charged twice on my card', 'i want my money back', 'the pot i bought is broken, can i exchange it',
  'my lawnmower blade is blunt, can you sharpen it', 'hedge trimmer battery wont charge', 'pressure washer has no pressure',
  'how do i change the spark plug on my mower', 'the greenhouse heater keeps cutting out', 'the door handle of my shed came off',
  'my bike has a puncture', 'the fridge is not cold', 'kitchen tap is dripping', 'who can mend my gutter', 'i need a builder',
  'can you recommend an electrician', 'do you know a good vet', 'need somebody to paint the fence', 'can someone come and do my garden',
  'how much do you charge per hour for gardening', 'do you do garden design', 'we need a landscaper for a driveway',
  'can you give me a price for tree felling', 'is there a firm who can take away rubble', 'book a visit for the school',
  'i want to cancel my booking', 'can i hire the hall', 'when is the plant sale', 'is the maze open to wheelchairs', 'what is the weather like today',
  'will there be frost tonight', 'is it raining where you are', 'how windy is it tomorrow', 'when will the heatwave end',
  'what temperature is it outside', 'hi', 'hello', 'hello?', 'hey there how is it going', 'good morning', 'thank you',
  'thanks a lot you were very helpful', 'bye for now', 'ok', 'yes', 'no', 'maybe later', 'what is your name', 'are you a person or a computer',
  'who made you', 'do you like gardening', 'tell me something funny', 'sing me a song', 'what is the meaning of life', 'are you married',
  'can you hear me', 'write me an email to my boss', 'translate this into german', 'what is the time in tokyo', 'who won the world cup',
  'what is on telly tonight', 'how many grams in a pound', 'help me with my homework', 'how do i lose weight', 'my back hurts', 'i have a headache',
  'what can i take for a cold', 'my son will not do his homework', 'the neighbours are too noisy', 'my wife left me', 'how do i get a passport',
  'where is the nearest bank', 'my laptop will not turn on', 'i forgot my password', 'how do i delete my account', 'the app is broken',
  'your site is slow', 'the video does not play', 'how do i upload a photo', 'i cannot log in', 'change my email address', 'qwertyuiop', 'asdfasdf',
  'xx xx xx', 'aaaaaa', 'sdkfj sldkfj', 'mnbvcxz lkjhg', 'test', 'testing 123', '???', '12345', 'bonjour je voudrais un renseignement',
  'mon rosier a des taches noires', 'guten tag wann haben sie geöffnet', 'meine rosen haben läuse', 'hola buenos dias', 'wo finde ich sie',
  'come sta', 'vorrei prenotare un tavolo', 'hej hur mår du', 'dag, hoe laat gaat u open', 'olá tudo bem', 'jak się masz', 'merhaba nasılsınız',
  'recipe for apple pie', 'how do i cook a chicken', 'what wine goes with fish', 'how long do you boil an egg', 'how do you make jam',
  'car insurance renewal', 'i need a taxi', 'train times to town', 'is the road closed', 'my cat is lost',
  'found a hedgehog in the road who do i call', 'there is a dead fox on my lawn who takes it away', 'my neighbours fence is on my land',
  'bins were not collected', 'street light is out', 'buy cheap watches online', 'click here to win', 'make money fast from home',
  'seo services for your website', 'we offer web design at low prices', 'flowers for a funeral please', 'can you send a bouquet to my mum',
  'do you deliver christmas trees', 'i need ten bags of bark delivered', 'do you have any red roses for valentines',
]

/** Questions about plants that could be taken for errands, used for fitting. */
export const LIKE_ERRANDS: readonly string[] = [
  'roses closed up and brown in the bud', 'how much water should a peace lily get, its leaves droop', 'no flowers on the hydrangea this year',
  'the rain has split my tomatoes', 'hot weather and now the lettuce is bitter and bolting', 'after the storm the leaves of the beans are in shreds',
  'my mower left brown tips all over the lawn', 'strimmer took the bark off my young cherry', 'cut the grass too short and now its yellow',
  'bought a cactus at the shop and its gone soft', 'delivered last week and the box plants are already brown',
  'the orchid from my birthday has dropped all its flowers', 'leaves look rusty on the pear', 'hello, my basil is dying',
  'hi there, got holes in my cabbage', 'thanks for last time, now it\'s the cucumbers that are wilting', 'it opens its buds and then they rot, peony',
  'is it the weather or is my maple sick', 'hail marks on apples', 'frost got the potatoes last night', 'wasps in the plums',
  'sticky car under the lime tree', 'rhubarb gone to flower', 'poor crop of peas', 'cost me a fortune that magnolia and its leaves are black',
  'price tag said full sun but the leaves are scorched, hosta', 'can you tell me why my fig drops its fruit', 'who is eating my strawberries',
  'what time of year do raspberries get mildew on them', 'my garlic has rust spots', 'wont start growing again after winter, my dahlia',
  'the ferns in the tea room look brown and crispy', 'school garden, sunflowers bent over and chewed', 'need advice holly losing leaves',
  'white stuff on phlox', 'onions soft neck', 'lawn full of moss', 'yellow iris leaves w streaks', 'plant sick pls help',
  'something wrong with my tree',
]

/** Errands never used for fitting. */
export const FRESH_ERRANDS: readonly string[] = [
  'when does the shop shut tonight', 'do you do gift cards', 'my leaf blower is making a funny noise', 'the hose reel is leaking, do you fix them',
  'can i speak to the manager please', 'whats the capital of france', 'good morning, is anybody there', 'ok thank you very much',
  'is it going to be sunny tomorrow for our picnic', 'is there a bus to the gardens', 'how old are you', 'lkjh poiu mnbv', 'zzz zzz zzz',
  'hallo, ich habe eine frage zu ihren preisen', 'quanto costa il biglietto', 'c\'est combien pour deux adultes', 'how much to lay a new patio',
  'i need a quote for a garden wall', 'can you come and cut down my hedge next tuesday', 'do you have a catalogue you can post me',
  'the website keeps crashing on my tablet', 'my neighbour plays loud music all night', 'who is the prime minister', 'what is 12 times 14',
  'how do i make a lasagne', 'i lost my gloves in your cafe yesterday', 'can i bring my dog into the shop', 'are there toilets on site',
  'what should i wear to a wedding', 'sell me a lawn mower',
]

/** Questions about plants that could be taken for errands, never used for fitting. */
export const FRESH_LIKE_ERRANDS: readonly string[] = [
  'its leaves are going see through', 'they all fell over in the night', 'white fluff, sticky', 'no fruit set at all this year',
  'can you help my plant its drooping', 'good evening, my tulips came up blind', 'hedge gone brown in patches next to the road',
  'our dog weed on the conifer and its brown', 'nothing has come up from the seed i sowed', 'buds falling off before they open',
  'how do i get rid of greenfly', 'hot greenhouse and the peppers drop their flowers', 'price of plums being what it is i want to know why mine rot',
  'my friend gave me an orchid and its leaves are wrinkly', 'open sores on the bark', 'what is this orange jelly on my juniper',
  'gloves covered in black sooty stuff from the camellia', 'bare patch under the tree where nothing grows',
  'sun burnt leaves after i moved it outside', 'bottom leaves yellow then crispy', 'the tips are brown', 'little flies when i water',
  'wet rotten smell from the pot', 'cafe window box geraniums have rings on the leaves', 'cut it back hard and now it sulks, lavender',
  'tuesday it was fine, wednesday all the squash plants collapsed', 'leaf blower uncovered holes in the lawn with soil round them',
  'webs all over the hedge', 'bolted onions', 'something digs up the bulbs at night',
]
