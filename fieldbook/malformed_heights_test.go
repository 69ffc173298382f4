package fieldbook_test

// malformedHeights is the part of the table of refused books that tells of heights, floor and water.
var malformedHeights = []badBook{
	// level, staff, water
	{head + "readings:\n- {level: A, rise: 1}\n- {level: A A, rise: -1}\n- {level: A B, is: 1}\n- {level: A B, rise: 1, bent: true, at_temperature: 30}\n", "bad-pair 3:11, self 4:11, missing-key 5:3, unknown-key 5:16, not-here 6:31, not-here 6:53"},
	{head + "readings:\n- {staff: A, is: 1.4}\n- {staff: A, setup: S1, is: -1.4, sight: 0}\n- {staff: A B, setup: S1, is: 1,4}\n", "missing-key 3:3, negative 4:29, not-positive 4:42, bad-name 5:11, decimal-comma 5:31"},
	{head + "readings:\n- {water: w1, is: 0.1}\n- {water: w1, under: w1, is: 0.1}\n- {water: w1, under: A, is: -5 mm, time: \"9:10\"}\n", "missing-key 3:3, self 4:22, negative 5:29, bad-time 5:42"},
	{head + "setups: {S1: {collimation: steep, sight: -2}, S2: {collimation: 12}, S3: {collimation: 0.1 mm}}\n", "bad-number 2:28, negative 2:42, too-large 2:65, bad-number 2:88"},
	// depth, wall, plumb, profile
	{head + "readings:\n- {depth: f1, is: 1.4}\n- {depth: f1, below: f1, is: -1}\n- {depth: f1, below: w1, is: 1, at: 3, left: 0}\n", "missing-key 3:3, self 4:22, negative 4:30, missing-key 5:37"},
	{head + "readings:\n- {depth: f1, below: A, is: 1, line: A B, left: 0}\n- {depth: f1, below: A, is: 1, line: A f1, at: 1}\n- {depth: f1, below: A, is: 1, line: A B, at: 1, left: 0, right: 0, sigma: [1 mm, 2 mm]}\n", "missing-key 3:38, self 4:11, one-of 4:38, one-of 5:38, count 5:76"},
	{head + "readings:\n- {water: w1, under: A, is: 0.1}\n- {depth: w1, below: A, is: 1}\n- {depth: f1, below: w1, is: 1, slope: true}\n", "ambiguous 5:22, not-here 5:22"},
	{head + "readings:\n- {wall: A, from: nose, to: nose, is: 1}\n- {wall: A, from: rim, to: cove, is: 0}\n- {wall: A, to: cove, is: 1}\n", "self 3:29, bad-choice 4:19, zero-length 4:38, missing-key 5:3"},
	{head + "readings:\n- {plumb: A, outward: 4 mm}\n- {plumb: A, down: 0, outward: 1, inward: 1}\n- {plumb: A, down: 0.3}\n- {plumb: A, down: 0.3, outward: -4 mm}\n", "missing-key 3:3, one-of 4:11, not-positive 4:20, one-of 5:11, negative 6:34"},
	{head + "readings:\n- {profile: A, from: nose, to: track}\n- {profile: A, from: nose, to: nose, outward: 1, inward: 1, down: 1, up: 1}\n- {profile: A, from: nose, to: lip, up: -1}\n", "one-of 3:13, one-of 4:13, one-of 4:13, self 4:32, bad-choice 5:32, negative 5:41"},
	// the temperature of a tape
	{head + "tools: {a: {temperature: 20}, b: {expansion: 0}, c: {expansion: 11.5, temperature: warm}, d: {expansion: 1e-5, temperature: 400}}\n", "missing-key 2:26, not-positive 2:46, too-large 2:65, bad-number 2:84, too-large 2:125"},
	{head + "tools: {t: {}}\nreadings:\n- {tie: A B, is: 5, at_temperature: 30}\n- {tie: A B, is: 5, at_temperature: 30, tool: t}\n- {width: A B, is: 5, tool: t, at_temperature: 30}\n- {from: A, to: [[B, 5]], at_temperature: hot, tool: t}\n", "missing-key 4:37, missing-key 5:47, missing-key 6:29, not-here 6:48, bad-number 7:43, missing-key 7:54"},
	// floor, steps, ledges, raised, spills
	{head + "floor: {breaks: [[f1], [f2, f3, f2]], pad: [p1, p2], toe: [], coves: [{line: rim, size: 0}]}\n", "count 2:8, count 2:19, self 2:33, count 2:45, no-such 2:78, not-positive 2:89"},
	{head + "floor: {coves: [{from: a, line: r, size: 1}, {from: x, to: x, line: r, size: 1, shape: square}, {size: 1}]}\nlines: {r: {runs: [{any: [a, b]}]}}\n", "missing-key 2:33, not-on-line 2:53, not-on-line 2:60, self 2:60, bad-choice 2:88, missing-key 2:97"},
	{head + "steps:\n- {treads: []}\n- {name: \" \", where: off, opening: [a], treads: [{runs: []}]}\n- {name: x, opening: [a, a], treads: [{runs: [{any: [a, b]}, {any: [c, d]}], below: A}]}\n- {name: x, treads: [{is: 1}]}\n", "count 3:3, missing-key 3:3, count 4:3, empty 4:10, bad-choice 4:22, short-line 4:50, self 5:26, runs-apart 5:62, missing-key 5:85, duplicate-key 6:10, missing-key 6:22, missing-key 6:27"},
	{head + "ledges:\n- {name: seat, kind: sofa, runs: [{any: [a]}], below: w, is: -1}\n- seat\n", "bad-choice 3:22, short-line 3:35, negative 3:62, wrong-type 4:3"},
	{head + "raised:\n- {name: n, foot: f, top: f, cap: 0, photo: [9]}\n- {name: m, foot: f}\nspills:\n- {name: w, kind: fall, lip: q, drop: -1, basin: q}\nlines: {f: {runs: [{any: [a, b]}]}}\n", "self 3:27, not-positive 3:35, later 3:38, missing-key 4:3, bad-choice 6:19, no-such 6:30, negative 6:39, no-such 6:50, self 6:50"},
	// rules for loops of levels and for depths
	{head + "rules: {level_loop: strict, depths: mine}\n", "bad-choice 2:21, bad-choice 2:37"},
	{head + "rules: {level_loop: {name: \"\", flat: 3 mm, per_root_km: 10 mm}}\n", "empty 2:28, one-of 2:28"},
	{head + "rules: {level_loop: {flat: -3 mm}}\n", "missing-key 2:21, negative 2:28"},
	{head + "rules: {level_loop: [3 mm]}\n", "wrong-type 2:21"},
	{head + "added:\n- {set: floor.a, to: {}}\n- {set: raised, to: {}}\n- {set: marks.two words, to: {}}\n- {set: ledges.north seat, to: {name: x}}\n- {set: floor, to: {pad: [a]}}\n", "bad-set 3:9, bad-set 4:9, bad-set 5:9, missing-key 6:32, unknown-key 6:33, count 7:27"},
}
