package theme

// light is the page by day: warm paper, brown-black ink, a pen of ink blue.
var light = base{
	paper: 0xf8f4ea, surface: 0xfffdf8, margin: 0xeee7d8,
	ink: 0x2a2822, inkSoft: 0x5c574b,
	rule: 0xddd4c1, outline: 0x847a66,
	primary: 0x2e5e46, onPrimary: 0xffffff,
	pen: 0x24527a, ribbon: 0xb24a2c,
	note: 0x24527a, noteWash: 0xe8eef2,
	caution: 0x7a3b6b, cautionWash: 0xf3e6ef,
	warning: 0x855000, warningWash: 0xfaedcf,
	wrong: 0xa3341f, wrongWash: 0xf9e3dc,
	good: 0x2f6b3a, goodWash: 0xe4eedb,
	soil: 0xd9c6ab, soilMark: 0x8a6d4a,
	water: 0xcfe2ec, waterMark: 0x3f7397,
	cold: 0x2f6690, coldWash: 0xd6e5f0,
	warm: 0xb5502f, warmWash: 0xf3dfc9,
	sun:      0x9a6b00,
	disabled: 0x8d8676, onStrong: 0xffffff, shadow: 0x3a3222,
	categories: [Categories]pair{
		{0x4b7a35, 0xe2edd5}, // young leaf
		{0xb8452b, 0xf8ded3}, // poppy
		{0x966000, 0xf7e6c2}, // ochre
		{0x3f6491, 0xdde6f0}, // slate
		{0x84477a, 0xefdeeb}, // plum
		{0x1d7672, 0xd5ebe8}, // teal
		{0x75573b, 0xece0d2}, // bark
		{0x5b5b5b, 0xe6e4e0}, // graphite
	},
}

// dark is the same notebook by lamplight: warm charcoal, never blue-black.
var dark = base{
	paper: 0x1e1c18, surface: 0x292620, margin: 0x161411,
	ink: 0xece5d6, inkSoft: 0xb8af9e,
	rule: 0x3e392f, outline: 0x8f8573,
	primary: 0x8cc3a0, onPrimary: 0x10231a,
	pen: 0x9cc3e6, ribbon: 0xe58a67,
	note: 0x9cc3e6, noteWash: 0x243039,
	caution: 0xdda4cf, cautionWash: 0x38283a,
	warning: 0xe8b45c, warningWash: 0x3a301b,
	wrong: 0xf0937c, wrongWash: 0x402620,
	good: 0x93cb97, goodWash: 0x26352a,
	soil: 0x4d3f2e, soilMark: 0xb3946a,
	water: 0x25404f, waterMark: 0x7fb4d6,
	cold: 0x86b9de, coldWash: 0x22384a,
	warm: 0xeb9a76, warmWash: 0x453426,
	sun:      0xe0b654,
	disabled: 0x7d7566, onStrong: 0x1b1512, shadow: 0x000000,
	categories: [Categories]pair{
		{0x97c37e, 0x2d3a24},
		{0xef8f73, 0x47281f},
		{0xe0ae55, 0x43351a},
		{0x8fb4e0, 0x26354a},
		{0xd398c8, 0x40293c},
		{0x6cc2bc, 0x1f3b39},
		{0xc7a582, 0x3b3026},
		{0xb9b4aa, 0x35332f},
	},
}

// lightContrast and darkContrast serve eyes and screens that need more: text at
// 7:1 and more, lines at 4.5:1 and more.
var lightContrast = base{
	paper: 0xffffff, surface: 0xffffff, margin: 0xf2f2f0,
	ink: 0x000000, inkSoft: 0x2e2e2c,
	rule: 0x9a9a96, outline: 0x3a3a38,
	primary: 0x003d24, onPrimary: 0xffffff,
	pen: 0x00356b, ribbon: 0x8f2000,
	note: 0x00356b, noteWash: 0xf0f5fa,
	caution: 0x5c0f4d, cautionWash: 0xfaf0f7,
	warning: 0x5a3500, warningWash: 0xfff6e0,
	wrong: 0x860f00, wrongWash: 0xfff0ec,
	good: 0x0c4a19, goodWash: 0xe9f5e9,
	soil: 0xe6d6bf, soilMark: 0x4a3417,
	water: 0xd6eaf6, waterMark: 0x0f4a73,
	cold: 0x003f75, coldWash: 0xdcebf8,
	warm: 0x8a2400, warmWash: 0xf9e6d2,
	sun:      0x5f4000,
	disabled: 0x6a6a66, onStrong: 0xffffff, shadow: 0x000000,
	categories: [Categories]pair{
		{0x255c0c, 0xe9f4de},
		{0x8f2000, 0xfce6dd},
		{0x664000, 0xfdf0d0},
		{0x123f7a, 0xe4edf8},
		{0x66215a, 0xf6e6f3},
		{0x00504c, 0xddf2ef},
		{0x4f3518, 0xf3e8da},
		{0x333333, 0xeeeeec},
	},
}

var darkContrast = base{
	paper: 0x000000, surface: 0x0d0d0c, margin: 0x000000,
	ink: 0xffffff, inkSoft: 0xdcdcd6,
	rule: 0x6e6e68, outline: 0xc8c8c0,
	primary: 0xa8e6c0, onPrimary: 0x000000,
	pen: 0xb5dbff, ribbon: 0xffb39a,
	note: 0xb5dbff, noteWash: 0x0d1a26,
	caution: 0xffc4f0, cautionWash: 0x260f22,
	warning: 0xffd37a, warningWash: 0x261c06,
	wrong: 0xffb3a1, wrongWash: 0x2b0f09,
	good: 0xb2ecb5, goodWash: 0x0f2414,
	soil: 0x33281a, soilMark: 0xe0c08f,
	water: 0x0e2836, waterMark: 0xa9d9f7,
	cold: 0xafdbff, coldWash: 0x102a40,
	warm: 0xffbfa3, warmWash: 0x36220f,
	sun:      0xffd96b,
	disabled: 0xa0a09a, onStrong: 0x000000, shadow: 0x000000,
	categories: [Categories]pair{
		{0xbfeaa3, 0x1a2a10},
		{0xffb8a0, 0x361508},
		{0xffd27a, 0x33240a},
		{0xb8d6ff, 0x13233b},
		{0xf5c3ec, 0x331a2e},
		{0x9ceae3, 0x0b2c2a},
		{0xe8ccaa, 0x2b2013},
		{0xdedede, 0x242422},
	},
}

// Colours for eyes that see fewer: the hues of M. Okabe and K. Ito, "Color
// Universal Design" (2008), moved in lightness until each keeps 3:1 against the
// page and all stay far apart when seen without one kind of cone (theme_test.go).
var safeLight = [Categories]pair{
	{0x006c44, 0xd9eee6}, // bluish green
	{0xb57518, 0xfbe2cf}, // orange
	{0x5c5100, 0xf5ecc0}, // yellow, darkened
	{0x003170, 0xd6e7f4}, // blue
	{0xa07591, 0xf6e0ec}, // reddish purple
	{0x3984e3, 0xdff0fa}, // sky blue
	{0x431f02, 0xeddcc8}, // vermilion, darkened
	{0x111618, 0xe3e1dc}, // black
}

var safeDark = [Categories]pair{
	{0x2ec79a, 0x17342a},
	{0xffa461, 0x472711},
	{0xdac900, 0x3d3a12},
	{0x1e76e8, 0x15304a},
	{0xa76396, 0x40283a},
	{0xa5c5ea, 0x1f3a48},
	{0xb95d03, 0x3a2a0c},
	{0xf4f3f1, 0x3a3833},
}
