/* data-strings.h: the texts of data/knowledge, data/lessons, data/profiles and data/stages, for xgettext only. Made by po/extract-data.py.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

/* knowledge/causes-board.json: board-short, title */
N_ ("Short on the game board")

/* knowledge/causes-board.json: board-short, detail */
N_ ("A shorted bypass capacitor or chip pulls a rail down; the supply folds back, ticks or blows its fuse until the board is out.")

/* knowledge/causes-board.json: board-short, repair, title */
N_ ("Find the shorted part on the board")

/* knowledge/causes-board.json: board-short, repair, steps */
N_ ("Unplug, pull the board. Find which rail is shorted by ohms.")

/* knowledge/causes-board.json: board-short, repair, steps */
N_ ("Split boards and plugs until the short is in one piece; look for a burnt or cracked capacitor.")

/* knowledge/causes-board.json: board-short, repair, steps */
N_ ("Follow the millivolts of a small bench current to the part, replace it, measure again before power.")

/* knowledge/causes-board.json: memory-bad, title */
N_ ("Memory chip bad")

/* knowledge/causes-board.json: memory-bad, detail */
N_ ("The rails are right, but a memory chip fails, often after it once lost its −5 V.")

/* knowledge/causes-board.json: memory-bad, repair, title */
N_ ("Prove the rails, then replace the chip")

/* knowledge/causes-board.json: memory-bad, repair, steps */
N_ ("Prove −5 V and +12 V at the board first where the memory needs them.")

/* knowledge/causes-board.json: memory-bad, repair, steps */
N_ ("Unplug. Swap the chip the self-test names, or swap pairs and see whether the fault moves.")

/* knowledge/causes-board.json: memory-bad, repair, steps */
N_ ("Fit a socket, run the self-test three times.")

/* knowledge/causes-board.json: socket-oxidised, title */
N_ ("Chip socket or chip legs oxidised")

/* knowledge/causes-board.json: socket-oxidised, detail */
N_ ("Legs have gone dark in old sockets: the rails are right, a push or a tap changes the picture.")

/* knowledge/causes-board.json: socket-oxidised, repair, title */
N_ ("Clean the legs, fit machined sockets")

/* knowledge/causes-board.json: socket-oxidised, repair, steps */
N_ ("Unplug, touch earthed metal, note each chip's place and notch.")

/* knowledge/causes-board.json: socket-oxidised, repair, steps */
N_ ("Lift the chips, clean the legs, look for broken ones; replace tired sockets rather than bending them.")

/* knowledge/causes-board.json: socket-oxidised, repair, steps */
N_ ("Run until warm and tap again.")

/* knowledge/causes-board.json: board-trace-loss, title */
N_ ("+5 V or ground lost on the board")

/* knowledge/causes-board.json: board-trace-loss, detail */
N_ ("From the edge to the far chips a trace, jumper or board-to-board ribbon takes more than a tenth of a volt.")

/* knowledge/causes-board.json: board-trace-loss, repair, title */
N_ ("Re-solder or bridge the weak path")

/* knowledge/causes-board.json: board-trace-loss, repair, steps */
N_ ("Find where between edge and far chip the volts go, running, in millivolts.")

/* knowledge/causes-board.json: board-trace-loss, repair, steps */
N_ ("Unplug. Re-solder the jumper or ribbon, or bridge the trace with a wire.")

/* knowledge/causes-board.json: board-trace-loss, repair, steps */
N_ ("Measure the far chip again.")

/* knowledge/causes-board.json: reset-part-bad, title */
N_ ("Reset or watchdog part bad")

/* knowledge/causes-board.json: reset-part-bad, detail */
N_ ("The small capacitor, diode or chip that makes the reset pulse is off: the board restarts, or starts only at the second try, with rails steady.")

/* knowledge/causes-board.json: reset-part-bad, repair, title */
N_ ("Replace the parts round the reset line")

/* knowledge/causes-board.json: reset-part-bad, repair, steps */
N_ ("Prove at the board that +5 V does not dip while it resets.")

/* knowledge/causes-board.json: reset-part-bad, repair, steps */
N_ ("Unplug. Replace the timing capacitor first, then its diode, then the chip.")

/* knowledge/causes-board.json: reset-part-bad, repair, steps */
N_ ("Try ten cold starts.")

/* knowledge/causes-board.json: board-corroded, title */
N_ ("Board corroded by battery, damp or foam")

/* knowledge/causes-board.json: board-corroded, detail */
N_ ("Salts creep along the traces; the board fails after some minutes or in wet weather with rails steady.")

/* knowledge/causes-board.json: board-corroded, repair, title */
N_ ("Neutralise, wash, rebuild traces and sockets")

/* knowledge/causes-board.json: board-corroded, repair, steps */
N_ ("Unplug. Take off battery and foam, neutralise, wash, dry well.")

/* knowledge/causes-board.json: board-corroded, repair, steps */
N_ ("Follow each green trace under a lens; bridge what is open, renew sockets.")

/* knowledge/causes-board.json: board-corroded, repair, steps */
N_ ("Run an hour, tap, run the self-test.")

/* knowledge/causes-board.json: scores-battery-flat, title */
N_ ("Battery for scores and settings flat")

/* knowledge/causes-board.json: scores-battery-flat, detail */
N_ ("The small battery on the board no longer carries the memory through the night: all else runs, but scores and settings are gone each morning.")

/* knowledge/causes-board.json: scores-battery-flat, repair, title */
N_ ("Fit a new battery, away from the board")

/* knowledge/causes-board.json: scores-battery-flat, repair, steps */
N_ ("Unplug, pull the board. Read the battery: below nine tenths of its label it is flat.")

/* knowledge/causes-board.json: scores-battery-flat, repair, steps */
N_ ("Note plus and minus, take it off, and look under it for green salts; wash what has leaked.")

/* knowledge/causes-board.json: scores-battery-flat, repair, steps */
N_ ("Fit the same kind in a holder on wires, away from the traces, plus to plus.")

/* knowledge/causes-board.json: scores-battery-flat, repair, steps */
N_ ("Set the game up anew, leave it without power for a night, look again.")

/* knowledge/causes-other.json: low-mains, title */
N_ ("Mains too low or sagging")

/* knowledge/causes-other.json: low-mains, detail */
N_ ("A long cord or a shared circuit starves the supply, mostly in the evening or when neighbours run.")

/* knowledge/causes-other.json: low-mains, repair, title */
N_ ("Shorter, heavier cord; a circuit of its own")

/* knowledge/causes-other.json: low-mains, repair, steps */
N_ ("This touches mains wiring: pull the plug first, and leave the work to a trained or licensed person. Local electrical codes win.")

/* knowledge/causes-other.json: low-mains, repair, steps */
N_ ("Try another outlet on another circuit, without extension cords.")

/* knowledge/causes-other.json: low-mains, repair, steps */
N_ ("If that cures it, have an electrician look at outlet and circuit.")

/* knowledge/causes-other.json: low-mains, repair, steps */
N_ ("Read +5 V with all neighbours running.")

/* knowledge/causes-other.json: wrong-tap, title */
N_ ("Transformer on the wrong mains tap")

/* knowledge/causes-other.json: wrong-tap, detail */
N_ ("The selector plug or jumper is for another mains voltage, so every winding is off by the same ratio.")

/* knowledge/causes-other.json: wrong-tap, repair, title */
N_ ("Have the tap set for the local mains")

/* knowledge/causes-other.json: wrong-tap, repair, steps */
N_ ("Unplug and leave it so.")

/* knowledge/causes-other.json: wrong-tap, repair, steps */
N_ ("Note what the selector says and what the outlet gives; hand the change over.")

/* knowledge/causes-other.json: wrong-tap, repair, steps */
N_ ("Afterwards read every rail with the board out first.")

/* knowledge/causes-other.json: mains-path-open, title */
N_ ("Mains does not reach the supply")

/* knowledge/causes-other.json: mains-path-open, detail */
N_ ("Switch, door interlock, cord, filter or mains fuse is open; nothing at all lives.")

/* knowledge/causes-other.json: mains-path-open, repair, title */
N_ ("Have the open part replaced")

/* knowledge/causes-other.json: mains-path-open, repair, steps */
N_ ("Try the outlet with a lamp. Close doors and look that the interlock is pressed.")

/* knowledge/causes-other.json: mains-path-open, repair, steps */
N_ ("Unplug. The rest of the path is for a trained person: fuse, switch, filter, cord.")

/* knowledge/causes-other.json: earth-missing, title */
N_ ("Protective earth missing")

/* knowledge/causes-other.json: earth-missing, detail */
N_ ("A cut pin or a loose lead leaves the cabinet's metal without earth: it tingles, hums, and can kill.")

/* knowledge/causes-other.json: earth-missing, repair, title */
N_ ("Have the earth restored before anything else")

/* knowledge/causes-other.json: earth-missing, repair, steps */
N_ ("Unplug and keep it unplugged. Hang a note on the plug.")

/* knowledge/causes-other.json: earth-missing, repair, steps */
N_ ("Have cord, plug and the bonds to coin door, panel, supply case and monitor frame made good.")

/* knowledge/causes-other.json: earth-missing, repair, steps */
N_ ("Measure earth continuity before power returns.")

/* knowledge/causes-other.json: supply-fine, title */
N_ ("Supply and wiring fine: board or game fault")

/* knowledge/causes-other.json: supply-fine, detail */
N_ ("Every rail is right where it is needed and stays so while the fault shows. Look for it in the game's logic.")

/* knowledge/causes-other.json: supply-fine, repair, title */
N_ ("Stop measuring rails, take the board to logic repair")

/* knowledge/causes-other.json: supply-fine, repair, steps */
N_ ("Keep the record of the rails: it saves the next person the same work.")

/* knowledge/causes-other.json: supply-fine, repair, steps */
N_ ("Go on with self-test, signals and chips, or send the board away with the record.")

/* knowledge/causes-other.json: supply-fine, repair, steps */
N_ ("If nothing shows for hours, give it back with the record and a date to look again.")

/* knowledge/causes-other.json: audio-filter-tired, title */
N_ ("Sound rail's filter capacitor tired")

/* knowledge/causes-other.json: audio-filter-tired, detail */
N_ ("The capacitors on the amplifier's own supply let mains hum through, whatever the volume.")

/* knowledge/causes-other.json: audio-filter-tired, repair, title */
N_ ("Renew the capacitors of the sound section")

/* knowledge/causes-other.json: audio-filter-tired, repair, steps */
N_ ("Unplug. Wait until the sound rail reads below 0.5 V.")

/* knowledge/causes-other.json: audio-filter-tired, repair, steps */
N_ ("Renew the large filter and the bypass capacitors at the amplifier, plus to plus.")

/* knowledge/causes-other.json: audio-filter-tired, repair, steps */
N_ ("Listen at volume zero, then loud.")

/* knowledge/causes-other.json: audio-amp-bad, title */
N_ ("Sound amplifier bad")

/* knowledge/causes-other.json: audio-amp-bad, detail */
N_ ("One half of the output has failed: hum or buzz, weak sound, DC on the speaker, a very hot chip.")

/* knowledge/causes-other.json: audio-amp-bad, repair, title */
N_ ("Replace the amplifier chip")

/* knowledge/causes-other.json: audio-amp-bad, repair, steps */
N_ ("Unplug the cabinet and wait until the sound rail reads below 0.5 V. Take the speaker off if its cone is pushed out.")

/* knowledge/causes-other.json: audio-amp-bad, repair, steps */
N_ ("Compare the sound rail's reading with what the chip allows, then fit a new chip with heat paste.")

/* knowledge/causes-other.json: audio-amp-bad, repair, steps */
N_ ("Measure DC across the speaker plug before the speaker goes on.")

/* knowledge/causes-other.json: audio-ground-loop, title */
N_ ("Sound or video ground shared or looped")

/* knowledge/causes-other.json: audio-ground-loop, detail */
N_ ("Sound, picture and logic share one thin return, or meet in two places, so one is heard or seen in the other.")

/* knowledge/causes-other.json: audio-ground-loop, repair, title */
N_ ("One heavy return each, meeting at the supply")

/* knowledge/causes-other.json: audio-ground-loop, repair, steps */
N_ ("Mains screws share this terminal strip: unplug and wait two minutes before you touch it, cover them before power returns.")

/* knowledge/causes-other.json: audio-ground-loop, repair, steps */
N_ ("Give amplifier and monitor a ground wire each, straight to the supply's 0 V screw; take off the second path.")

/* knowledge/causes-other.json: audio-ground-loop, repair, steps */
N_ ("Listen and look with volume low and high.")

/* knowledge/causes-other.json: speaker-path-open, title */
N_ ("Speaker, volume control or its wiring open")

/* knowledge/causes-other.json: speaker-path-open, detail */
N_ ("The amplifier plays into nothing: a scratchy volume control, a torn cone or a loose wire.")

/* knowledge/causes-other.json: speaker-path-open, repair, title */
N_ ("Mend speaker path or volume control")

/* knowledge/causes-other.json: speaker-path-open, repair, steps */
N_ ("Unplug. Read the speaker by ohms: a few ohms, with a click.")

/* knowledge/causes-other.json: speaker-path-open, repair, steps */
N_ ("Turn the volume control end to end; clean or replace it.")

/* knowledge/causes-other.json: speaker-path-open, repair, steps */
N_ ("Mend the wire, listen again.")

/* knowledge/causes-other.json: monitor-filter-tired, title */
N_ ("Monitor's own filter tired")

/* knowledge/causes-other.json: monitor-filter-tired, detail */
N_ ("Bars or waves belong to the monitor: they stay with the game board unplugged.")

/* knowledge/causes-other.json: monitor-filter-tired, repair, title */
N_ ("Hand the monitor to a trained person")

/* knowledge/causes-other.json: monitor-filter-tired, repair, steps */
N_ ("A picture tube keeps more than 20 000 V long after it is unplugged, and its neck breaks easily: keep hands out of the monitor.")

/* knowledge/causes-other.json: monitor-filter-tired, repair, steps */
N_ ("Note what the picture does with the game board in and out.")

/* knowledge/causes-other.json: monitor-filter-tired, repair, steps */
N_ ("Unplug. The monitor is opened only by a person trained on picture tubes.")

/* knowledge/causes-other.json: monitor-worn, title */
N_ ("Monitor's tube or drive worn")

/* knowledge/causes-other.json: monitor-worn, detail */
N_ ("The tube has lost its glow or one of its colour drives has failed: the picture is dim or lacks a colour with any board.")

/* knowledge/causes-other.json: monitor-worn, repair, title */
N_ ("Hand the dim monitor to a trained person")

/* knowledge/causes-other.json: monitor-worn, repair, steps */
N_ ("Turn up brightness and contrast at the controls that are reached from outside, and note what helps.")

/* knowledge/causes-other.json: monitor-worn, repair, steps */
N_ ("Unplug. The monitor is opened and judged only by a person trained on picture tubes.")

/* knowledge/causes-other.json: video-ground-open, title */
N_ ("Video ground, sync or colour wire open")

/* knowledge/causes-other.json: video-ground-open, detail */
N_ ("The picture's return, sync or colour wire is broken or slack: the picture tears, shifts or loses a colour when wires are moved.")

/* knowledge/causes-other.json: video-ground-open, repair, title */
N_ ("Restore the video ground, sync or colour wire")

/* knowledge/causes-other.json: video-ground-open, repair, steps */
N_ ("Unplug. Mend the harness outside the monitor: pin, plug, wire to the board.")

/* knowledge/causes-other.json: video-ground-open, repair, steps */
N_ ("Anything on the monitor chassis is for a trained person; some stand at mains voltage.")

/* knowledge/causes-other.json: meter-or-leads, title */
N_ ("Meter, leads or place of measuring")

/* knowledge/causes-other.json: meter-or-leads, detail */
N_ ("A flat battery, a wrong mode, a loose lead or the wrong screw tells a story that the cabinet does not.")

/* knowledge/causes-other.json: meter-or-leads, repair, title */
N_ ("Set the meter right, measure again")

/* knowledge/causes-other.json: meter-or-leads, repair, steps */
N_ ("Fresh battery, DC volts, leads in the volt jacks.")

/* knowledge/causes-other.json: meter-or-leads, repair, steps */
N_ ("Short the leads, read a fresh battery, read one point twice.")

/* knowledge/causes-other.json: meter-or-leads, repair, steps */
N_ ("Take the odd readings again.")

/* knowledge/causes-other.json: other, title */
N_ ("Something this list does not have")

/* knowledge/causes-other.json: other, detail */
N_ ("The readings fit none of the causes here. More of the same checks will not find it; somebody with the drawings may.")

/* knowledge/causes-other.json: other, repair, title */
N_ ("Hand it to somebody with the drawings")

/* knowledge/causes-other.json: other, repair, steps */
N_ ("Write down what it does, what it does not do, what was read and what was tried.")

/* knowledge/causes-other.json: other, repair, steps */
N_ ("Print or save the record and leave it with the cabinet.")

/* knowledge/causes-other.json: other, repair, steps */
N_ ("Take both to somebody who has the drawings of this machine: a specialist, a club, the maker's agent.")

/* knowledge/causes-supply.json: trim-low, title */
N_ ("Trim set too low")

/* knowledge/causes-supply.json: trim-low, detail */
N_ ("The supply works, but its screw was left low or was set with no board on it, so every rail that follows sits low in proportion.")

/* knowledge/causes-supply.json: trim-low, repair, title */
N_ ("Set the trim at the board, loaded")

/* knowledge/causes-supply.json: trim-low, repair, steps */
N_ ("The trim and the DC screws sit beside bare mains screws: cover those first, keep one hand clear, use an insulated driver.")

/* knowledge/causes-supply.json: trim-low, repair, steps */
N_ ("Clip the leads to +5 V and ground on the board itself, then switch on.")

/* knowledge/causes-supply.json: trim-low, repair, steps */
N_ ("Turn the trim a little at a time until the board shows 5.00 to 5.05 V.")

/* knowledge/causes-supply.json: trim-low, repair, steps */
N_ ("Read every other rail again: one screw moves them all.")

/* knowledge/causes-supply.json: trim-low, repair, steps */
N_ ("Look at the supply terminals too. Above 5.30 V there, stop: mend the wiring instead.")

/* knowledge/causes-supply.json: trim-low, repair, steps */
N_ ("Write reading and date on the supply.")

/* knowledge/causes-supply.json: trim-high, title */
N_ ("Trim set too high")

/* knowledge/causes-supply.json: trim-high, detail */
N_ ("Somebody turned the screw up to hide a loss in the wiring or a weak −5 V; now +5 V and +12 V are high and parts run hot.")

/* knowledge/causes-supply.json: trim-high, repair, title */
N_ ("Turn the trim back, then find out why it was raised")

/* knowledge/causes-supply.json: trim-high, repair, steps */
N_ ("Clip the leads to +5 V and ground on the board, then switch on.")

/* knowledge/causes-supply.json: trim-high, repair, steps */
N_ ("Turn the trim down until the board shows 5.00 to 5.05 V.")

/* knowledge/causes-supply.json: trim-high, repair, steps */
N_ ("If the game now resets, the wiring loses too much: measure the drops before anything else.")

/* knowledge/causes-supply.json: trim-high, repair, steps */
N_ ("Read every other rail again.")

/* knowledge/causes-supply.json: trim-worn, title */
N_ ("Trim dirty or worn")

/* knowledge/causes-supply.json: trim-worn, detail */
N_ ("The wiper loses touch with its track, so the rails jump when the supply is knocked, warmed or adjusted.")

/* knowledge/causes-supply.json: trim-worn, repair, title */
N_ ("Have the trim replaced by a sealed multi-turn one")

/* knowledge/causes-supply.json: trim-worn, repair, steps */
N_ ("The inside of a supply holds mains, and about 300 V stays in it for minutes after unplugging: do not open it at the bench.")

/* knowledge/causes-supply.json: trim-worn, repair, steps */
N_ ("Mark where the screw stands and note every rail.")

/* knowledge/causes-supply.json: trim-worn, repair, steps */
N_ ("Hand the supply over, or fit a good one in its place, unplugged.")

/* knowledge/causes-supply.json: trim-worn, repair, steps */
N_ ("Set +5 V at the board, loaded, once the supply is back.")

/* knowledge/causes-supply.json: output-capacitors-tired, title */
N_ ("Supply capacitors tired")

/* knowledge/causes-supply.json: output-capacitors-tired, detail */
N_ ("Dried-out capacitors let the rails ripple and dip at every step of load; some supplies then start only on the second try.")

/* knowledge/causes-supply.json: output-capacitors-tired, repair, title */
N_ ("Replace the supply, or have its capacitors changed")

/* knowledge/causes-supply.json: output-capacitors-tired, repair, steps */
N_ ("Note every rail and the ripple as they are now.")

/* knowledge/causes-supply.json: output-capacitors-tired, repair, steps */
N_ ("Unplugged, fit a supply of the same ratings. Its mains wires are work for a trained person.")

/* knowledge/causes-supply.json: output-capacitors-tired, repair, steps */
N_ ("If the old one is kept, hand it over for new low-loss capacitors.")

/* knowledge/causes-supply.json: output-capacitors-tired, repair, steps */
N_ ("Set +5 V at the board, loaded, and read ripple and rails again.")

/* knowledge/causes-supply.json: minimum-load-missing, title */
N_ ("No minimum load")

/* knowledge/causes-supply.json: minimum-load-missing, detail */
N_ ("This kind of supply needs some current drawn from it; with too little it ticks, or the other rails stray.")

/* knowledge/causes-supply.json: minimum-load-missing, repair, title */
N_ ("Give the rail a bleed resistor")

/* knowledge/causes-supply.json: minimum-load-missing, repair, steps */
N_ ("Unplug. Choose the rail that has no user: 5 Ω 10 W from +5 V to 0 V, 47 Ω 5 W from +12 V, 100 Ω 1 W from −5 V.")

/* knowledge/causes-supply.json: minimum-load-missing, repair, steps */
N_ ("Use twice the wattage where you can and mount it clear of wires: it runs hot.")

/* knowledge/causes-supply.json: minimum-load-missing, repair, steps */
N_ ("Screw it in beside the wires of that rail, cover the mains screws, switch on and read every rail.")

/* knowledge/causes-supply.json: supply-overloaded, title */
N_ ("Supply too small for its load")

/* knowledge/causes-supply.json: supply-overloaded, detail */
N_ ("The board set draws as much as the label allows or more, so all rails sag together and the case runs hot.")

/* knowledge/causes-supply.json: supply-overloaded, repair, title */
N_ ("Fit a supply of the next size up")

/* knowledge/causes-supply.json: supply-overloaded, repair, steps */
N_ ("Add up what the boards draw on +5 V; choose a supply whose label shows at least a quarter more.")

/* knowledge/causes-supply.json: supply-overloaded, repair, steps */
N_ ("Unplug. The mains wires are work for a trained person.")

/* knowledge/causes-supply.json: supply-overloaded, repair, steps */
N_ ("Set +5 V at the board, loaded, and read every rail.")

/* knowledge/causes-supply.json: supply-overheats, title */
N_ ("Fan dead or vents blocked")

/* knowledge/causes-supply.json: supply-overheats, detail */
N_ ("The supply warms until its rails drift or it shuts down, and comes back when it has cooled.")

/* knowledge/causes-supply.json: supply-overheats, repair, title */
N_ ("Clean the vents, replace the fan")

/* knowledge/causes-supply.json: supply-overheats, repair, steps */
N_ ("Unplug. Brush and vacuum the vents from outside.")

/* knowledge/causes-supply.json: supply-overheats, repair, steps */
N_ ("A fan inside the supply is replaced by a trained person; a cabinet fan on a low-voltage plug you can change yourself.")

/* knowledge/causes-supply.json: supply-overheats, repair, steps */
N_ ("Run an hour and read +5 V cold and warm.")

/* knowledge/causes-supply.json: supply-primary-dead, title */
N_ ("Supply will not start")

/* knowledge/causes-supply.json: supply-primary-dead, detail */
N_ ("A start-up part, the switching transistor or the inner fuse has failed; nothing comes out, or the rails only twitch.")

/* knowledge/causes-supply.json: supply-primary-dead, repair, title */
N_ ("Replace the supply")

/* knowledge/causes-supply.json: supply-primary-dead, repair, steps */
N_ ("Make sure first that a dummy load does not wake it and that the board is no short.")

/* knowledge/causes-supply.json: supply-primary-dead, repair, steps */
N_ ("Prove the new supply on a dummy load before the board goes in, then set it at the board.")

/* knowledge/causes-supply.json: p12-lost-supply, title */
N_ ("+12 V lost in the supply")

/* knowledge/causes-supply.json: p12-lost-supply, detail */
N_ ("The +12 V diode or capacitor of the supply has failed: +5 V is right while +12 V is missing, low or rippled.")

/* knowledge/causes-supply.json: p12-lost-supply, repair, title */
N_ ("Replace the supply, or have its +12 V side repaired")

/* knowledge/causes-supply.json: p12-lost-supply, repair, steps */
N_ ("Unplug everything from +12 V and read it once more: if it returns, look for the load that pulls it down.")

/* knowledge/causes-supply.json: p12-lost-supply, repair, steps */
N_ ("Unplug and fit a good supply. The mains wires are work for a trained person.")

/* knowledge/causes-supply.json: p12-lost-supply, repair, steps */
N_ ("Set it at the board and read every rail.")

/* knowledge/causes-supply.json: minus5-lost-supply, title */
N_ ("−5 V lost in the supply")

/* knowledge/causes-supply.json: minus5-lost-supply, detail */
N_ ("The small −5 V regulator, its diode or its capacitor has failed; the rail is missing at the terminals even with the board out.")

/* knowledge/causes-supply.json: minus5-lost-supply, repair, title */
N_ ("Restore −5 V before the board goes back")

/* knowledge/causes-supply.json: minus5-lost-supply, repair, steps */
N_ ("Leave the board out: three-rail memory dies without its −5 V.")

/* knowledge/causes-supply.json: minus5-lost-supply, repair, steps */
N_ ("Hand the supply over, or fit a good supply or a small add-on −5 V module, unplugged.")

/* knowledge/causes-supply.json: minus5-lost-supply, repair, steps */
N_ ("Prove −5 V at the terminals, then fit the board and read it there.")

/* knowledge/causes-supply.json: minus12-lost-supply, title */
N_ ("−12 V lost in the supply")

/* knowledge/causes-supply.json: minus12-lost-supply, detail */
N_ ("The −12 V winding's diode, capacitor or regulator has failed: op-amps and anything made from −12 V go quiet or hum.")

/* knowledge/causes-supply.json: minus12-lost-supply, repair, title */
N_ ("Replace the supply, or have its −12 V side repaired")

/* knowledge/causes-supply.json: minus12-lost-supply, repair, steps */
N_ ("Read −12 V at the terminals with the board out: missing there proves it.")

/* knowledge/causes-supply.json: minus12-lost-supply, repair, steps */
N_ ("Read every rail at the board.")

/* knowledge/causes-supply.json: p24-lost-supply, title */
N_ ("+24 V lost in the supply")

/* knowledge/causes-supply.json: p24-lost-supply, detail */
N_ ("The +24 V diode, capacitor or fuse of the supply has failed: sound, lockouts and counters stop while the game plays.")

/* knowledge/causes-supply.json: p24-lost-supply, repair, title */
N_ ("Replace the supply, or have its +24 V side repaired")

/* knowledge/causes-supply.json: p24-lost-supply, repair, steps */
N_ ("Look for a blown +24 V fuse first, and for what blew it.")

/* knowledge/causes-supply.json: p24-lost-supply, repair, steps */
N_ ("Read +24 V at the board before the volume goes up.")

/* knowledge/causes-supply.json: raw-capacitor-tired, title */
N_ ("Big filter capacitor tired")

/* knowledge/causes-supply.json: raw-capacitor-tired, detail */
N_ ("The large capacitor ahead of the regulator has dried out: between two mains peaks the raw voltage falls too low and the regulator drops out.")

/* knowledge/causes-supply.json: raw-capacitor-tired, repair, title */
N_ ("Replace the big filter capacitor")

/* knowledge/causes-supply.json: raw-capacitor-tired, repair, steps */
N_ ("The transformer and its mains wires are within reach here, and the capacitor stays charged: unplug, prove it empty, trained hands only.")

/* knowledge/causes-supply.json: raw-capacitor-tired, repair, steps */
N_ ("Unplug, wait five minutes, and measure the capacitor: below 1 V before any hand goes near. Never discharge it with a screwdriver.")

/* knowledge/causes-supply.json: raw-capacitor-tired, repair, steps */
N_ ("Fit the same or up to half as much capacitance again, at the same or a higher voltage, plus to plus.")

/* knowledge/causes-supply.json: raw-capacitor-tired, repair, steps */
N_ ("Prove the supply with the board out, then read ripple and +5 V loaded.")

/* knowledge/causes-supply.json: bridge-diode-open, title */
N_ ("One bridge diode open")

/* knowledge/causes-supply.json: bridge-diode-open, detail */
N_ ("The raw rail is filled only once each mains cycle instead of twice, so its ripple doubles and hums at mains frequency.")

/* knowledge/causes-supply.json: bridge-diode-open, repair, title */
N_ ("Replace the bridge")

/* knowledge/causes-supply.json: bridge-diode-open, repair, steps */
N_ ("Unplug, wait five minutes, prove the big capacitor below 1 V.")

/* knowledge/causes-supply.json: bridge-diode-open, repair, steps */
N_ ("Take the transformer leads off, test the four diodes, fit a bridge block of at least 25 A on its heat sink.")

/* knowledge/causes-supply.json: bridge-diode-open, repair, steps */
N_ ("Read the ripple with the board running.")

/* knowledge/causes-supply.json: bridge-diode-shorted, title */
N_ ("One bridge diode shorted")

/* knowledge/causes-supply.json: bridge-diode-shorted, detail */
N_ ("A shorted diode mostly blows its fuse at once; now and then it does not, and shows only as dips on +5 V and a hot transformer.")

/* knowledge/causes-supply.json: bridge-diode-shorted, repair, title */
N_ ("Replace bridge and fuse")

/* knowledge/causes-supply.json: bridge-diode-shorted, repair, steps */
N_ ("Fit a new bridge block and a fuse of the marked rating and type.")

/* knowledge/causes-supply.json: bridge-diode-shorted, repair, steps */
N_ ("Switch on with the board out and read the raw rail before anything is plugged in.")

/* knowledge/causes-supply.json: pass-transistor-bad, title */
N_ ("Pass transistor bad")

/* knowledge/causes-supply.json: pass-transistor-bad, detail */
N_ ("Shorted, it puts the raw voltage on +5 V and kills boards; open, there is no +5 V though the raw rail is high.")

/* knowledge/causes-supply.json: pass-transistor-bad, repair, title */
N_ ("Replace pass transistor and driver, prove on a dummy load")

/* knowledge/causes-supply.json: pass-transistor-bad, repair, steps */
N_ ("Leave the board out until the end.")

/* knowledge/causes-supply.json: pass-transistor-bad, repair, steps */
N_ ("Fit transistor and driver, look at the small current resistors, renew the insulating washer.")

/* knowledge/causes-supply.json: pass-transistor-bad, repair, steps */
N_ ("Prove +5 V on a dummy load, below 5.4 V from the first moment.")

/* knowledge/causes-supply.json: regulator-drifted, title */
N_ ("Regulator or its reference off")

/* knowledge/causes-supply.json: regulator-drifted, detail */
N_ ("The regulator's reference has moved or its control is weak: +5 V is off, answers the trim poorly or drifts as it warms.")

/* knowledge/causes-supply.json: regulator-drifted, repair, title */
N_ ("Have the regulator repaired")

/* knowledge/causes-supply.json: regulator-drifted, repair, steps */
N_ ("Leave the board out.")

/* knowledge/causes-supply.json: regulator-drifted, repair, steps */
N_ ("Hand the regulator board over: its control chip, reference and resistors are tested and renewed.")

/* knowledge/causes-supply.json: regulator-drifted, repair, steps */
N_ ("Prove +5 V on a dummy load, cold and warm, before the board goes back.")

/* knowledge/causes-supply.json: sense-open, title */
N_ ("Sense line open")

/* knowledge/causes-supply.json: sense-open, detail */
N_ ("The supply no longer sees the board's voltage, believes it is low and pushes the terminals up, or wanders when wires are touched.")

/* knowledge/causes-supply.json: sense-open, repair, title */
N_ ("Restore the sense wires")

/* knowledge/causes-supply.json: sense-open, repair, steps */
N_ ("Unplug at once and take the board out: the terminals may stand above 5.5 V.")

/* knowledge/causes-supply.json: sense-open, repair, steps */
N_ ("Follow the sense wires to the board, clean their fingers and mend the break; look for a browned resistor beside them.")

/* knowledge/causes-supply.json: sense-open, repair, steps */
N_ ("Prove the terminals with the board out, then read the board loaded.")

/* knowledge/causes-supply.json: protection-latched, title */
N_ ("Over-voltage protection has tripped")

/* knowledge/causes-supply.json: protection-latched, detail */
N_ ("The supply saw too much voltage and shut itself down, or its crowbar blew the fuse; it comes back only after some minutes unplugged.")

/* knowledge/causes-supply.json: protection-latched, repair, title */
N_ ("Let it reset, then find the over-voltage")

/* knowledge/causes-supply.json: protection-latched, repair, steps */
N_ ("Leave it unplugged for five minutes, board out.")

/* knowledge/causes-supply.json: protection-latched, repair, steps */
N_ ("Still unplugged, screw in a dummy load. Cover the mains screws, switch on, read +5 V at once.")

/* knowledge/causes-supply.json: protection-latched, repair, steps */
N_ ("Right again: look for what pushed it up, most often the trim or the sense wires. Still dead: treat it as a supply that will not start.")

/* knowledge/causes-wiring.json: edge-oxidised, title */
N_ ("Edge connector oxidised")

/* knowledge/causes-wiring.json: edge-oxidised, detail */
N_ ("A dull film between fingers and springs adds resistance: the supply is right, the board gets less, and moving the connector changes everything.")

/* knowledge/causes-wiring.json: edge-oxidised, repair, title */
N_ ("Clean fingers and springs, set the springs proud")

/* knowledge/causes-wiring.json: edge-oxidised, repair, steps */
N_ ("Unplug, pull the connector straight off.")

/* knowledge/causes-wiring.json: edge-oxidised, repair, steps */
N_ ("Wipe the fingers with alcohol and a lint-free cloth; a soft eraser only where the film will not go.")

/* knowledge/causes-wiring.json: edge-oxidised, repair, steps */
N_ ("Clean the springs and lift the flat ones. Replace a connector that no longer grips.")

/* knowledge/causes-wiring.json: edge-oxidised, repair, steps */
N_ ("Fit it, check key and row, and measure the drops again. Re-seating alone lasts weeks, not years.")

/* knowledge/causes-wiring.json: edge-burnt, title */
N_ ("Edge finger or spring burnt")

/* knowledge/causes-wiring.json: edge-burnt, detail */
N_ ("One of several parallel contacts stopped carrying, the rest ran hot and browned; the drop is large and grows with heat.")

/* knowledge/causes-wiring.json: edge-burnt, repair, title */
N_ ("New connector, new pins, repair the finger")

/* knowledge/causes-wiring.json: edge-burnt, repair, steps */
N_ ("Unplug, pull the connector. Cut back to bright copper; renew every pin that shares the current, not only the brown one.")

/* knowledge/causes-wiring.json: edge-burnt, repair, steps */
N_ ("Re-tin or overlay the burnt finger.")

/* knowledge/causes-wiring.json: edge-burnt, repair, steps */
N_ ("Measure the drops, then feel the connector after twenty minutes.")

/* knowledge/causes-wiring.json: poor-crimp, title */
N_ ("Poor crimp or burnt in-line plug")

/* knowledge/causes-wiring.json: poor-crimp, detail */
N_ ("A pin that was squeezed badly or a plug that ran hot sits between supply and board and takes its share of the voltage.")

/* knowledge/causes-wiring.json: poor-crimp, repair, title */
N_ ("New pins on both halves, crimped with the proper tool")

/* knowledge/causes-wiring.json: poor-crimp, repair, steps */
N_ ("Unplug. Cut off both halves of the bad contact.")

/* knowledge/causes-wiring.json: poor-crimp, repair, steps */
N_ ("Crimp new pins with the tool made for them; do not solder over a loose crimp.")

/* knowledge/causes-wiring.json: poor-crimp, repair, steps */
N_ ("Tug each wire, fit the plug, measure the drop again.")

/* knowledge/causes-wiring.json: ground-wire-poor, title */
N_ ("Ground wire too thin, cracked or missing")

/* knowledge/causes-wiring.json: ground-wire-poor, detail */
N_ ("The return path lifts the board's ground: +5 V shrinks, sound and picture disturb each other.")

/* knowledge/causes-wiring.json: ground-wire-poor, repair, title */
N_ ("Add a heavy ground wire")

/* knowledge/causes-wiring.json: ground-wire-poor, repair, steps */
N_ ("Run 1 mm² or thicker (16 to 18 AWG) from the supply's 0 V screw to the board's ground fingers; one of its own for sound, monitor and panel.")

/* knowledge/causes-wiring.json: ground-wire-poor, repair, steps */
N_ ("Crimp lugs, tighten, measure the ground drop again.")

/* knowledge/causes-wiring.json: plus5-wire-thin, title */
N_ ("+5 V wire too thin or too long")

/* knowledge/causes-wiring.json: plus5-wire-thin, detail */
N_ ("Every joint is good, but the copper itself eats the allowance: the drop is spread evenly along the wire.")

/* knowledge/causes-wiring.json: plus5-wire-thin, repair, title */
N_ ("Run a second +5 V and ground wire in parallel")

/* knowledge/causes-wiring.json: plus5-wire-thin, repair, steps */
N_ ("Add a wire pair of 1 mm² or thicker from the terminals to other fingers of the same rail.")

/* knowledge/causes-wiring.json: plus5-wire-thin, repair, steps */
N_ ("Measure both drops, then set the trim at the board again.")

/* knowledge/causes-wiring.json: loose-terminal-screw, title */
N_ ("Loose screw at the supply terminal")

/* knowledge/causes-wiring.json: loose-terminal-screw, detail */
N_ ("A wire under a slack screw makes heat and a voltage drop that changes with every touch.")

/* knowledge/causes-wiring.json: loose-terminal-screw, repair, title */
N_ ("Cut back, fit a ferrule or lug, tighten")

/* knowledge/causes-wiring.json: loose-terminal-screw, repair, steps */
N_ ("Cut back to bright copper, crimp a ferrule or lug, tighten firmly; do the neighbours while you are there.")

/* knowledge/causes-wiring.json: loose-terminal-screw, repair, steps */
N_ ("Measure the drop again with the board running.")

/* knowledge/causes-wiring.json: minus5-open-wire, title */
N_ ("−5 V wire open or missing")

/* knowledge/causes-wiring.json: minus5-open-wire, detail */
N_ ("The supply makes −5 V, but wire, pin or finger does not carry it; three-rail memory heats and dies without it.")

/* knowledge/causes-wiring.json: minus5-open-wire, repair, title */
N_ ("Fit the −5 V wire")

/* knowledge/causes-wiring.json: minus5-open-wire, repair, steps */
N_ ("Unplug, take the board out and leave it out.")

/* knowledge/causes-wiring.json: minus5-open-wire, repair, steps */
N_ ("Follow the wire from the −5 V screw to its finger; renew pin and wire.")

/* knowledge/causes-wiring.json: minus5-open-wire, repair, steps */
N_ ("Read −5 V at the empty connector, then unplug, fit the board and read it again.")

/* knowledge/causes-wiring.json: fuse-holder-tired, title */
N_ ("Fuse or holder has resistance")

/* knowledge/causes-wiring.json: fuse-holder-tired, detail */
N_ ("The fuse still beeps, but slack or brown clips take volts under load and open when knocked.")

/* knowledge/causes-wiring.json: fuse-holder-tired, repair, title */
N_ ("New fuse and new holder")

/* knowledge/causes-wiring.json: fuse-holder-tired, repair, steps */
N_ ("Unplug. For a fuse on the mains side, stop here and hand it over.")

/* knowledge/causes-wiring.json: fuse-holder-tired, repair, steps */
N_ ("On a low-voltage fuse, renew clips and fuse together, same rating and same type.")

/* knowledge/causes-wiring.json: fuse-holder-tired, repair, steps */
N_ ("Read the rail behind it under load.")

/* knowledge/causes-wiring.json: fuse-blown, title */
N_ ("Fuse blown by a real overload")

/* knowledge/causes-wiring.json: fuse-blown, detail */
N_ ("A fuse did its work: something behind it draws too much. A bigger fuse only moves the fire.")

/* knowledge/causes-wiring.json: fuse-blown, repair, title */
N_ ("Find the overload, then fit the marked fuse")

/* knowledge/causes-wiring.json: fuse-blown, repair, steps */
N_ ("Unplug. Measure what is behind the fuse for a short before a new fuse goes in.")

/* knowledge/causes-wiring.json: fuse-blown, repair, steps */
N_ ("Fit the marked rating and type, never more, never a piece of metal.")

/* knowledge/causes-wiring.json: fuse-blown, repair, steps */
N_ ("A mains fuse, or a second one that blows, is for a trained person.")

/* knowledge/causes-wiring.json: connector-shifted, title */
N_ ("Connector on the wrong way or one row off")

/* knowledge/causes-wiring.json: connector-shifted, detail */
N_ ("After work on the cabinet a plug went on reversed or shifted, so rails reach fingers they should not.")

/* knowledge/causes-wiring.json: connector-shifted, repair, title */
N_ ("Correct the plug, then look for damage")

/* knowledge/causes-wiring.json: connector-shifted, repair, steps */
N_ ("Unplug at once.")

/* knowledge/causes-wiring.json: connector-shifted, repair, steps */
N_ ("Compare each wire with the pin-out, fit a key, set the plug right.")

/* knowledge/causes-wiring.json: connector-shifted, repair, steps */
N_ ("Measure the board's inputs for shorts before power returns; sound amplifier, diodes and capacitors suffer first.")

/* knowledge/causes-wiring.json: panel-ground-open, title */
N_ ("Control panel ground chain open")

/* knowledge/causes-wiring.json: panel-ground-open, detail */
N_ ("The ground that is looped from switch to switch is broken, so several controls die or stick together.")

/* knowledge/causes-wiring.json: panel-ground-open, repair, title */
N_ ("Close the ground chain")

/* knowledge/causes-wiring.json: panel-ground-open, repair, steps */
N_ ("Unplug. Follow the daisy chain from switch to switch and back to the board.")

/* knowledge/causes-wiring.json: panel-ground-open, repair, steps */
N_ ("Renew the broken tab or wire; feed the chain from both ends.")

/* knowledge/causes-wiring.json: panel-ground-open, repair, steps */
N_ ("Measure the drop to the last switch.")

/* knowledge/causes-wiring.json: switch-bad, title */
N_ ("Control or coin switch bad")

/* knowledge/causes-wiring.json: switch-bad, detail */
N_ ("One switch, or the wire to it, no longer makes or breaks: that control or coin slot is dead, stuck or counts by itself.")

/* knowledge/causes-wiring.json: switch-bad, repair, title */
N_ ("Clean or renew the switch and its wire")

/* knowledge/causes-wiring.json: switch-bad, repair, steps */
N_ ("Unplug. Take one wire off the switch and read it by ohms: below 1 Ω pressed, open when let go.")

/* knowledge/causes-wiring.json: switch-bad, repair, steps */
N_ ("Bend nothing; clean the contacts, or fit a switch of the same kind.")

/* knowledge/causes-wiring.json: switch-bad, repair, steps */
N_ ("Follow the wire to the board's input pin when the switch is good, and mend it.")

/* knowledge/causes-wiring.json: switch-bad, repair, steps */
N_ ("Read the input again, idle and pressed.")

/* knowledge/causes-wiring.json: lamp-circuit-short, title */
N_ ("Lamp or coin circuit pulls the rail down")

/* knowledge/causes-wiring.json: lamp-circuit-short, detail */
N_ ("A shorted lamp socket or coil in the coin door loads the rail or blows its fuse.")

/* knowledge/causes-wiring.json: lamp-circuit-short, repair, title */
N_ ("Mend socket, coil diode or wire in the coin door")

/* knowledge/causes-wiring.json: lamp-circuit-short, repair, steps */
N_ ("Unplug the cabinet. Take off the coin door's plug, look at sockets and solenoid wires.")

/* knowledge/causes-wiring.json: lamp-circuit-short, repair, steps */
N_ ("Mend, and fit the diode across each coil.")

/* knowledge/causes-wiring.json: lamp-circuit-short, repair, steps */
N_ ("Plug in and watch the rail while the lamps burn.")

/* knowledge/causes-wiring.json: cracked-joint, title */
N_ ("Cracked solder joint")

/* knowledge/causes-wiring.json: cracked-joint, detail */
N_ ("A ring-shaped crack round a heavy pin opens with heat or movement; header pins, transistors and transformer lugs crack first.")

/* knowledge/causes-wiring.json: cracked-joint, repair, title */
N_ ("Re-flow the joint")

/* knowledge/causes-wiring.json: cracked-joint, repair, steps */
N_ ("Unplug. On the game board or a harness header, clean the joint, add fresh solder, look for the shine all round.")

/* knowledge/causes-wiring.json: cracked-joint, repair, steps */
N_ ("A joint inside the supply, on the transformer or in the monitor is handed to a trained person.")

/* knowledge/causes-wiring.json: cracked-joint, repair, steps */
N_ ("Repeat the test that made it fail.")

/* knowledge/checks-board.json: board-input-ohms, title */
N_ ("Board inputs by ohms")

/* knowledge/checks-board.json: board-input-ohms, why */
N_ ("Tells before power whether a short is waiting.")

/* knowledge/checks-board.json: board-input-ohms, how */
N_ ("Unplug, pull the board, wait a minute. Meter on ohms: short the leads first and note what they read.")

/* knowledge/checks-board.json: board-input-ohms, how */
N_ ("Measure each power finger to ground, both ways round.")

/* knowledge/checks-board.json: board-input-ohms, how */
N_ ("Expect 8 to 100 Ω on +5 V, more than 50 Ω on +12 V, more than 500 Ω on −5 V.")

/* knowledge/checks-board.json: board-input-ohms, normal, title */
N_ ("As usual on every rail")

/* knowledge/checks-board.json: board-input-ohms, normal, meaning */
N_ ("No dead short. A chip that latches under power can still hide.")

/* knowledge/checks-board.json: board-input-ohms, short, title */
N_ ("Below 2 Ω on a rail")

/* knowledge/checks-board.json: board-input-ohms, short, meaning */
N_ ("A short on the board: find it before power.")

/* knowledge/checks-board.json: board-input-ohms, open, title */
N_ ("Open on +5 V")

/* knowledge/checks-board.json: board-input-ohms, open, meaning */
N_ ("A broken trace, or the wrong finger.")

/* knowledge/checks-board.json: ground-ohms, title */
N_ ("Grounds by ohms")

/* knowledge/checks-board.json: ground-ohms, why */
N_ ("Finds an open ground; a poor one needs the drop under load.")

/* knowledge/checks-board.json: ground-ohms, safety */
N_ ("Mains screws share the supply's terminal strip, and the monitor keeps its charge: pull the plug, stay at the harness plug, outside the monitor.")

/* knowledge/checks-board.json: ground-ohms, how */
N_ ("Unplug. Meter on ohms: short the leads and note what they read.")

/* knowledge/checks-board.json: ground-ohms, how */
N_ ("From the supply's 0 V screw to: ground fingers, sound ground, video ground at the monitor's harness plug, panel ground.")

/* knowledge/checks-board.json: ground-ohms, how */
N_ ("Use the number, not the beeper: it sings up to 30 Ω.")

/* knowledge/checks-board.json: ground-ohms, how */
N_ ("Expect 0.0 to 0.2 Ω to each, the leads taken off.")

/* knowledge/checks-board.json: ground-ohms, good, title */
N_ ("All below 0.5 Ω")

/* knowledge/checks-board.json: ground-ohms, good, meaning */
N_ ("No open ground. Millivolts under load tell the rest.")

/* knowledge/checks-board.json: ground-ohms, power, title */
N_ ("High to the board")

/* knowledge/checks-board.json: ground-ohms, power, meaning */
N_ ("The board's ground is weak or open.")

/* knowledge/checks-board.json: ground-ohms, panel, title */
N_ ("High to the panel")

/* knowledge/checks-board.json: ground-ohms, panel, meaning */
N_ ("The panel's ground chain is open.")

/* knowledge/checks-board.json: ground-ohms, picture, title */
N_ ("High to monitor or sound ground")

/* knowledge/checks-board.json: ground-ohms, picture, meaning */
N_ ("That return is missing: it finds another way, and you see or hear it.")

/* knowledge/checks-board.json: tap-test, title */
N_ ("Tap the boards")

/* knowledge/checks-board.json: tap-test, why */
N_ ("A socket that answers to a tap while the rails stand still is found.")

/* knowledge/checks-board.json: tap-test, safety */
N_ ("Bare mains parts are within reach of the supply: a dry plastic stick only, from outside, one hand.")

/* knowledge/checks-board.json: tap-test, how */
N_ ("Game running, meter on DC volts, clipped to +5 V and ground on the board.")

/* knowledge/checks-board.json: tap-test, how */
N_ ("Tap and lightly flex the game board with a plastic stick, chip by chip. Tap the closed case of the supply from outside; never reach into it.")

/* knowledge/checks-board.json: tap-test, how */
N_ ("Watch picture and reading.")

/* knowledge/checks-board.json: tap-test, how */
N_ ("Expect a still picture and a reading that moves less than 10 mV.")

/* knowledge/checks-board.json: tap-test, still, title */
N_ ("Nothing changes")

/* knowledge/checks-board.json: tap-test, still, meaning */
N_ ("No mechanical fault where you tapped. Try again warm.")

/* knowledge/checks-board.json: tap-test, board, title */
N_ ("Changes with the game board")

/* knowledge/checks-board.json: tap-test, board, meaning */
N_ ("A socket, joint or trace on the board, or its edge.")

/* knowledge/checks-board.json: tap-test, supply, title */
N_ ("Changes with the supply")

/* knowledge/checks-board.json: tap-test, supply, meaning */
N_ ("A joint, fuse clip or the trim in the supply.")

/* knowledge/checks-board.json: reset-pin, title */
N_ ("Reset pin of the processor")

/* knowledge/checks-board.json: reset-pin, why */
N_ ("Says whether the board is held, kicked or left alone.")

/* knowledge/checks-board.json: reset-pin, how */
N_ ("With the drawing at hand, find the reset pin; clip on with power off.")

/* knowledge/checks-board.json: reset-pin, how */
N_ ("First +5 V at the board, then DC volts from the reset pin to ground, game running.")

/* knowledge/checks-board.json: reset-pin, how */
N_ ("Expect a steady 3.5 V or more on the usual parts; some rest the other way up.")

/* knowledge/checks-board.json: reset-pin, steady, title */
N_ ("Steady in its idle state")

/* knowledge/checks-board.json: reset-pin, steady, meaning */
N_ ("Nobody resets it now.")

/* knowledge/checks-board.json: reset-pin, stuck, title */
N_ ("Held in reset though +5 V is right")

/* knowledge/checks-board.json: reset-pin, stuck, meaning */
N_ ("The reset part holds it: capacitor, diode, chip.")

/* knowledge/checks-board.json: reset-pin, bobbing, title */
N_ ("Bobs up and down")

/* knowledge/checks-board.json: reset-pin, bobbing, meaning */
N_ ("The watchdog kicks: the program does not run.")

/* knowledge/checks-board.json: reset-pin, unfed, title */
N_ ("+5 V is missing or below 4.7 V")

/* knowledge/checks-board.json: reset-pin, unfed, meaning */
N_ ("First give the board its +5 V; the reset part does its duty.")

/* knowledge/checks-board.json: self-test, title */
N_ ("Self-test of the game")

/* knowledge/checks-board.json: self-test, why */
N_ ("The board's own word on its memory and sockets.")

/* knowledge/checks-board.json: self-test, how */
N_ ("Only once −5 V is proved where the memory needs it: start the self-test as the game's papers say.")

/* knowledge/checks-board.json: self-test, how */
N_ ("Write down what it shows, twice. Look at the settings page too, then again after a minute without power.")

/* knowledge/checks-board.json: self-test, how */
N_ ("Expect no error, and settings that stay.")

/* knowledge/checks-board.json: self-test, passes, title */
N_ ("Passes")

/* knowledge/checks-board.json: self-test, passes, meaning */
N_ ("Memory is good as far as it looks.")

/* knowledge/checks-board.json: self-test, names, title */
N_ ("Names a chip or shows an error")

/* knowledge/checks-board.json: self-test, names, meaning */
N_ ("That chip or its socket; measure +5 V at that chip first.")

/* knowledge/checks-board.json: self-test, refuses, title */
N_ ("Does not get that far")

/* knowledge/checks-board.json: self-test, refuses, meaning */
N_ ("Too sick to test: power, reset or the processor's own chips.")

/* knowledge/checks-board.json: self-test, forgets, title */
N_ ("Passes, but settings do not stay")

/* knowledge/checks-board.json: self-test, forgets, meaning */
N_ ("The battery or what keeps the memory alive: read the battery, look for salts under it.")

/* knowledge/checks-board.json: socket-reseat, title */
N_ ("Re-seat the socketed chips")

/* knowledge/checks-board.json: socket-reseat, why */
N_ ("A quick cure that also convicts; it does not last without cleaning.")

/* knowledge/checks-board.json: socket-reseat, how */
N_ ("Lift and press each socketed chip once, straight; look for dark or bent legs.")

/* knowledge/checks-board.json: socket-reseat, how */
N_ ("Fit the board, check key and row, run it and try to bring the fault on.")

/* knowledge/checks-board.json: socket-reseat, how */
N_ ("Expect no change from good sockets.")

/* knowledge/checks-board.json: socket-reseat, same, title */
N_ ("No change")

/* knowledge/checks-board.json: socket-reseat, same, meaning */
N_ ("Not the sockets, or not by this alone.")

/* knowledge/checks-board.json: socket-reseat, better, title */
N_ ("Changes or cures it")

/* knowledge/checks-board.json: socket-reseat, better, meaning */
N_ ("Oxidised sockets: clean the legs, renew the sockets.")

/* knowledge/checks-board.json: board-swap-donor, title */
N_ ("Try a known good board")

/* knowledge/checks-board.json: board-swap-donor, why */
N_ ("Settles board against cabinet when readings do not.")

/* knowledge/checks-board.json: board-swap-donor, how */
N_ ("Only after every rail has proved right at the empty connector: a bad supply kills the second board too.")

/* knowledge/checks-board.json: board-swap-donor, how */
N_ ("Unplug, wait until the rails are below 0.5 V, swap, check key and row.")

/* knowledge/checks-board.json: board-swap-donor, how */
N_ ("Run it and try to bring the fault on.")

/* knowledge/checks-board.json: board-swap-donor, how */
N_ ("Expect the fault to stay when the cabinet is to blame, and to go with the board when the board is.")

/* knowledge/checks-board.json: board-swap-donor, gone, title */
N_ ("The fault is gone")

/* knowledge/checks-board.json: board-swap-donor, gone, meaning */
N_ ("It was the board, or the contact you just re-seated.")

/* knowledge/checks-board.json: board-swap-donor, stays, title */
N_ ("The fault stays")

/* knowledge/checks-board.json: board-swap-donor, stays, meaning */
N_ ("The cabinet: supply, wiring, sound or monitor.")

/* knowledge/checks-drops.json: p5-drop-wire, title */
N_ ("Drop along the +5 V wire")

/* knowledge/checks-drops.json: p5-drop-wire, why */
N_ ("What the +5 V wire and its joints eat, read directly and so far finer than two readings subtracted.")

/* knowledge/checks-drops.json: p5-drop-wire, safety */
N_ ("Mains screws share the terminal strip: fit the insulating cap or card over them before you switch on, use shrouded tips, one hand only. No cover, no reading.")

/* knowledge/checks-drops.json: p5-drop-wire, how */
N_ ("Cover the mains screws. Meter on DC millivolts.")

/* knowledge/checks-drops.json: p5-drop-wire, how */
N_ ("Red lead on the supply's +5 V screw, black lead on a +5 V finger on the board's side of the connector.")

/* knowledge/checks-drops.json: p5-drop-wire, how */
N_ ("Read with the game running, once for each finger.")

/* knowledge/checks-drops.json: p5-drop-wire, how */
N_ ("Expect 20 to 100 mV at 3 to 5 A, and the same from fingers side by side.")

/* knowledge/checks-drops.json: p5-drop-wire, none, title */
N_ ("Below 5 mV")

/* knowledge/checks-drops.json: p5-drop-wire, none, meaning */
N_ ("No current, or both leads on the same side: look at the points before you believe it.")

/* knowledge/checks-drops.json: p5-drop-wire, good, title */
N_ ("5 to 100 mV")

/* knowledge/checks-drops.json: p5-drop-wire, good, meaning */
N_ ("The +5 V path is good. Measure the ground path too.")

/* knowledge/checks-drops.json: p5-drop-wire, marginal, title */
N_ ("100 to 200 mV")

/* knowledge/checks-drops.json: p5-drop-wire, marginal, meaning */
N_ ("Getting heavy. Find where it drops before it grows.")

/* knowledge/checks-drops.json: p5-drop-wire, high, title */
N_ ("200 mV or more")

/* knowledge/checks-drops.json: p5-drop-wire, high, meaning */
N_ ("Mend the path, do not trim round it. Find the joint next.")

/* knowledge/checks-drops.json: ground-drop-wire, title */
N_ ("Drop along the ground wire")

/* knowledge/checks-drops.json: ground-drop-wire, why */
N_ ("Half of all wiring loss hides in the return, where nobody looks.")

/* knowledge/checks-drops.json: ground-drop-wire, how */
N_ ("Red lead on a ground finger on the board's side, black lead on the supply's 0 V screw.")

/* knowledge/checks-drops.json: ground-drop-wire, how */
N_ ("Read with the game running, quiet and loud.")

/* knowledge/checks-drops.json: ground-drop-wire, how */
N_ ("Expect 10 to 50 mV.")

/* knowledge/checks-drops.json: ground-drop-wire, none, title */
N_ ("Below 3 mV")

/* knowledge/checks-drops.json: ground-drop-wire, good, title */
N_ ("3 to 50 mV")

/* knowledge/checks-drops.json: ground-drop-wire, good, meaning */
N_ ("The return is good.")

/* knowledge/checks-drops.json: ground-drop-wire, marginal, title */
N_ ("50 to 100 mV")

/* knowledge/checks-drops.json: ground-drop-wire, marginal, meaning */
N_ ("Getting heavy. Look at joints and wire thickness.")

/* knowledge/checks-drops.json: ground-drop-wire, high, title */
N_ ("100 mV or more")

/* knowledge/checks-drops.json: ground-drop-wire, high, meaning */
N_ ("The return is too weak: add a ground wire or mend the joint before any trim.")

/* knowledge/checks-drops.json: drop-where, title */
N_ ("Where along the path it drops")

/* knowledge/checks-drops.json: drop-where, why */
N_ ("One bad joint is cleaned or crimped, a thin wire is doubled: this says which.")

/* knowledge/checks-drops.json: drop-where, how */
N_ ("Cover the mains screws. Meter on DC millivolts, game running.")

/* knowledge/checks-drops.json: drop-where, how */
N_ ("Step along the path: screw to lug, lug to plug, across the plug, plug to crimp, crimp to finger.")

/* knowledge/checks-drops.json: drop-where, how */
N_ ("Do it on +5 V and on ground; note the largest step.")

/* knowledge/checks-drops.json: drop-where, how */
N_ ("Expect less than 5 mV from screw to lug and less than 15 mV at any other joint.")

/* knowledge/checks-drops.json: drop-where, none, title */
N_ ("No step above 15 mV")

/* knowledge/checks-drops.json: drop-where, none, meaning */
N_ ("The path is good everywhere.")

/* knowledge/checks-drops.json: drop-where, spread, title */
N_ ("Evenly along the wire")

/* knowledge/checks-drops.json: drop-where, spread, meaning */
N_ ("The copper is too thin or too long: run a second pair.")

/* knowledge/checks-drops.json: drop-where, edge, title */
N_ ("At the edge connector")

/* knowledge/checks-drops.json: drop-where, edge, meaning */
N_ ("Clean or renew the connector.")

/* knowledge/checks-drops.json: drop-where, joint, title */
N_ ("At a crimp, plug or fuse clip")

/* knowledge/checks-drops.json: drop-where, joint, meaning */
N_ ("Renew that contact, both halves.")

/* knowledge/checks-drops.json: drop-where, screw, title */
N_ ("At a supply screw")

/* knowledge/checks-drops.json: drop-where, screw, meaning */
N_ ("Cut back, lug, tighten, unplugged.")

/* knowledge/checks-drops.json: wiggle-test, title */
N_ ("Wiggle test")

/* knowledge/checks-drops.json: wiggle-test, why */
N_ ("Finds the joint that is good only while nothing moves.")

/* knowledge/checks-drops.json: wiggle-test, how */
N_ ("Cover the mains screws. Meter on DC volts, clipped to +5 V and ground on the board, MIN/MAX on if it has it.")

/* knowledge/checks-drops.json: wiggle-test, how */
N_ ("With a dry plastic stick, one hand, move in turn: edge connector, plugs and harness, wires near the supply's DC screws.")

/* knowledge/checks-drops.json: wiggle-test, how */
N_ ("More than 50 mV or a reset names the joint.")

/* knowledge/checks-drops.json: wiggle-test, how */
N_ ("Expect less than 10 mV of movement.")

/* knowledge/checks-drops.json: wiggle-test, still, title */
N_ ("Nothing moves it")

/* knowledge/checks-drops.json: wiggle-test, still, meaning */
N_ ("No loose joint where you tried. Try again warm.")

/* knowledge/checks-drops.json: wiggle-test, edge, title */
N_ ("Moves at the edge connector")

/* knowledge/checks-drops.json: wiggle-test, edge, meaning */
N_ ("Clean or renew the edge connector.")

/* knowledge/checks-drops.json: wiggle-test, harness, title */
N_ ("Moves at a plug, crimp or header")

/* knowledge/checks-drops.json: wiggle-test, harness, meaning */
N_ ("Renew that contact or re-flow that joint.")

/* knowledge/checks-drops.json: wiggle-test, screw, title */
N_ ("Moves at the supply screws")

/* knowledge/checks-drops.json: wiggle-test, screw, meaning */
N_ ("Unplug, lug and tighten.")

/* knowledge/checks-drops.json: connector-temperature, title */
N_ ("Connector temperature after twenty minutes")

/* knowledge/checks-drops.json: connector-temperature, why */
N_ ("Watts at a contact are volts that the board misses.")

/* knowledge/checks-drops.json: connector-temperature, how */
N_ ("Let the game run twenty minutes.")

/* knowledge/checks-drops.json: connector-temperature, how */
N_ ("Touch the back of one finger to the plastic of the edge connector and of each low-voltage plug, never to metal.")

/* knowledge/checks-drops.json: connector-temperature, how */
N_ ("Compare with the air in the cabinet; a thermometer does as well.")

/* knowledge/checks-drops.json: connector-temperature, how */
N_ ("Expect less than 15 °C above the air.")

/* knowledge/checks-drops.json: connector-temperature, cool, title */
N_ ("Hardly warmer than the air")

/* knowledge/checks-drops.json: connector-temperature, cool, meaning */
N_ ("No contact is burning power.")

/* knowledge/checks-drops.json: connector-temperature, warm, title */
N_ ("Plainly warm")

/* knowledge/checks-drops.json: connector-temperature, warm, meaning */
N_ ("A contact is losing. Measure the drop there.")

/* knowledge/checks-drops.json: connector-temperature, hot, title */
N_ ("Too hot to hold")

/* knowledge/checks-drops.json: connector-temperature, hot, meaning */
N_ ("Switch off. That contact is burning: renew it with all its parallel pins.")

/* knowledge/checks-drops.json: sense-drop, title */
N_ ("Sense wire against the board")

/* knowledge/checks-drops.json: sense-drop, why */
N_ ("A supply steers by what its sense wire tells it.")

/* knowledge/checks-drops.json: sense-drop, how */
N_ ("Find out whether the supply has sense wires; many small ones have none.")

/* knowledge/checks-drops.json: sense-drop, how */
N_ ("Cover the mains screws. Meter on DC millivolts: one lead on the supply's sense pin, the other on the same rail at the board.")

/* knowledge/checks-drops.json: sense-drop, how */
N_ ("Read with the game running.")

/* knowledge/checks-drops.json: sense-drop, how */
N_ ("Expect less than 20 mV.")

/* knowledge/checks-drops.json: sense-drop, same, title */
N_ ("Below 50 mV")

/* knowledge/checks-drops.json: sense-drop, same, meaning */
N_ ("The sense wire tells the truth.")

/* knowledge/checks-drops.json: sense-drop, off, title */
N_ ("50 mV or more, or wandering")

/* knowledge/checks-drops.json: sense-drop, off, meaning */
N_ ("The sense wire is open or dirty: restore it before any trim.")

/* knowledge/checks-drops.json: sense-drop, without, title */
N_ ("No sense wires here")

/* knowledge/checks-drops.json: sense-drop, without, meaning */
N_ ("This supply looks at its own terminals; leave this check.")

/* knowledge/checks-look.json: look-and-smell, title */
N_ ("Look and smell")

/* knowledge/checks-look.json: look-and-smell, why */
N_ ("Five minutes, no risk, and it finds what a meter cannot.")

/* knowledge/checks-look.json: look-and-smell, safety */
N_ ("Look, do not reach: a supply keeps about 300 V and a picture tube over 20 000 V after the plug is out. Unplug, do not only switch off.")

/* knowledge/checks-look.json: look-and-smell, how */
N_ ("Unplug and wait two minutes.")

/* knowledge/checks-look.json: look-and-smell, how */
N_ ("With a lamp, look at supply, harness, plugs, edge connector, fuses and large capacitors. Smell.")

/* knowledge/checks-look.json: look-and-smell, how */
N_ ("Touch nothing inside the monitor or behind a cover.")

/* knowledge/checks-look.json: look-and-smell, how */
N_ ("Expect no browning, bulge, leak, crust or loose wire, and the fuses that the labels ask for.")

/* knowledge/checks-look.json: look-and-smell, clean, title */
N_ ("Nothing odd")

/* knowledge/checks-look.json: look-and-smell, clean, meaning */
N_ ("No gross damage. Measure.")

/* knowledge/checks-look.json: look-and-smell, brown, title */
N_ ("Brown plug, finger or board")

/* knowledge/checks-look.json: look-and-smell, brown, meaning */
N_ ("Heat: that contact or part carried too much or gripped too little.")

/* knowledge/checks-look.json: look-and-smell, bulged, title */
N_ ("Bulged or leaking capacitor")

/* knowledge/checks-look.json: look-and-smell, bulged, meaning */
N_ ("That capacitor is tired, and its neighbours are as old.")

/* knowledge/checks-look.json: look-and-smell, crust, title */
N_ ("White or green crust, damp")

/* knowledge/checks-look.json: look-and-smell, crust, meaning */
N_ ("Corrosion: clean before you measure.")

/* knowledge/checks-look.json: look-and-smell, misfit, title */
N_ ("Something missing, loose, cut or wrong")

/* knowledge/checks-look.json: look-and-smell, misfit, meaning */
N_ ("Wrong fuse, shifted plug, cut earth pin, hanging wire: set that right first.")

/* knowledge/checks-look.json: edge-connector-look, title */
N_ ("Edge connector, close look")

/* knowledge/checks-look.json: edge-connector-look, why */
N_ ("The commonest fault of all can be seen.")

/* knowledge/checks-look.json: edge-connector-look, how */
N_ ("Unplug, pull the connector straight off the board.")

/* knowledge/checks-look.json: edge-connector-look, how */
N_ ("Lamp and lens: both sides of the fingers, then into the springs.")

/* knowledge/checks-look.json: edge-connector-look, how */
N_ ("Compare the power fingers with the signal fingers.")

/* knowledge/checks-look.json: edge-connector-look, how */
N_ ("Expect bright, flat fingers and springs that stand proud.")

/* knowledge/checks-look.json: edge-connector-look, bright, title */
N_ ("Bright fingers, springs proud")

/* knowledge/checks-look.json: edge-connector-look, bright, meaning */
N_ ("Good contact; a thin film can still hide.")

/* knowledge/checks-look.json: edge-connector-look, dull, title */
N_ ("Dull, grey or dirty")

/* knowledge/checks-look.json: edge-connector-look, dull, meaning */
N_ ("Clean it now, whatever else is wrong.")

/* knowledge/checks-look.json: edge-connector-look, dark, title */
N_ ("Dark, pitted or burnt")

/* knowledge/checks-look.json: edge-connector-look, dark, meaning */
N_ ("It has been hot: new connector and pins, all that share the current.")

/* knowledge/checks-look.json: crimp-tug, title */
N_ ("Tug the crimps, look at the joints")

/* knowledge/checks-look.json: crimp-tug, why */
N_ ("Loose metal is found by hand in less time than by meter.")

/* knowledge/checks-look.json: crimp-tug, safety */
N_ ("Mains screws sit beside the DC screws: pull the plug, do not only switch off, wait two minutes, keep to the low-voltage wires.")

/* knowledge/checks-look.json: crimp-tug, how */
N_ ("Tug each low-voltage power wire at its pin and at the supply's DC screw; turn nothing, leave the mains screws alone.")

/* knowledge/checks-look.json: crimp-tug, how */
N_ ("Lens on the header pins: look for a ring round the pin.")

/* knowledge/checks-look.json: crimp-tug, how */
N_ ("Expect no movement and no ring.")

/* knowledge/checks-look.json: crimp-tug, firm, title */
N_ ("All firm, no rings")

/* knowledge/checks-look.json: crimp-tug, firm, meaning */
N_ ("No loose joint to be felt.")

/* knowledge/checks-look.json: crimp-tug, pin, title */
N_ ("A wire moves in its pin, or is off")

/* knowledge/checks-look.json: crimp-tug, pin, meaning */
N_ ("Crimp new pins, both halves.")

/* knowledge/checks-look.json: crimp-tug, screw, title */
N_ ("A wire moves under a screw")

/* knowledge/checks-look.json: crimp-tug, screw, meaning */
N_ ("Cut back, lug, tighten.")

/* knowledge/checks-look.json: crimp-tug, ring, title */
N_ ("A ring round a solder pin")

/* knowledge/checks-look.json: crimp-tug, ring, meaning */
N_ ("Re-flow that joint.")

/* knowledge/checks-look.json: trim-seal-look, title */
N_ ("Has the trim been touched?")

/* knowledge/checks-look.json: trim-seal-look, why */
N_ ("One minute, and it tells how far to trust the setting.")

/* knowledge/checks-look.json: trim-seal-look, how */
N_ ("Unplug.")

/* knowledge/checks-look.json: trim-seal-look, how */
N_ ("Look at the trim: sealing paint whole, or scratches and a bright slot?")

/* knowledge/checks-look.json: trim-seal-look, how */
N_ ("Ask who worked on the cabinet last, and on what.")

/* knowledge/checks-look.json: trim-seal-look, how */
N_ ("Expect whole paint and a dull slot.")

/* knowledge/checks-look.json: trim-seal-look, sealed, title */
N_ ("Sealed, undisturbed")

/* knowledge/checks-look.json: trim-seal-look, sealed, meaning */
N_ ("The setting is probably the maker's.")

/* knowledge/checks-look.json: trim-seal-look, turned, title */
N_ ("Turned lately, or paint broken")

/* knowledge/checks-look.json: trim-seal-look, turned, meaning */
N_ ("Somebody set it: for this board, or to hide something?")

/* knowledge/checks-look.json: fuse-ohms, title */
N_ ("Fuses by ohms")

/* knowledge/checks-look.json: fuse-ohms, why */
N_ ("A fuse that beeps can still be bad.")

/* knowledge/checks-look.json: fuse-ohms, safety */
N_ ("One of these fuses may be the mains fuse: pull the plug, do not only switch off. Leave a fuse behind a cover to a trained person.")

/* knowledge/checks-look.json: fuse-ohms, how */
N_ ("Unplug, wait two minutes, take each fuse out of its holder.")

/* knowledge/checks-look.json: fuse-ohms, how */
N_ ("Meter on ohms: short the leads and note it, then read across the end caps of the fuse. Do not use the beeper.")

/* knowledge/checks-look.json: fuse-ohms, how */
N_ ("Expect at most 0.2 Ω for one ampere or more, 0.5 to 5 Ω for a quarter or half an ampere.")

/* knowledge/checks-look.json: fuse-ohms, good, title */
N_ ("All as they should be")

/* knowledge/checks-look.json: fuse-ohms, good, meaning */
N_ ("The fuses are good. Look at their clips too.")

/* knowledge/checks-look.json: fuse-ohms, raised, title */
N_ ("One is several times too high")

/* knowledge/checks-look.json: fuse-ohms, raised, meaning */
N_ ("Renew that fuse and its holder.")

/* knowledge/checks-look.json: fuse-ohms, open, title */
N_ ("One is open")

/* knowledge/checks-look.json: fuse-ohms, open, meaning */
N_ ("It did its work: find the overload before a new one goes in.")

/* knowledge/checks-look.json: fuse-holder-look, title */
N_ ("Fuse clips, look and spring")

/* knowledge/checks-look.json: fuse-holder-look, why */
N_ ("A slack clip costs volts and answers to a thump.")

/* knowledge/checks-look.json: fuse-holder-look, safety */
N_ ("One of these holders may be the mains fuse's: pull the plug, do not only switch off, and wait before you touch.")

/* knowledge/checks-look.json: fuse-holder-look, how */
N_ ("Look at clips and caps: bright or brown? Press the fuse: does it sit tight?")

/* knowledge/checks-look.json: fuse-holder-look, how */
N_ ("Read the fuse: is it the marked rating?")

/* knowledge/checks-look.json: fuse-holder-look, how */
N_ ("Expect bright, tight clips and the marked fuse.")

/* knowledge/checks-look.json: fuse-holder-look, tight, title */
N_ ("Bright and tight")

/* knowledge/checks-look.json: fuse-holder-look, tight, meaning */
N_ ("The holders are good.")

/* knowledge/checks-look.json: fuse-holder-look, slack, title */
N_ ("Brown, slack or not the marked fuse")

/* knowledge/checks-look.json: fuse-holder-look, slack, meaning */
N_ ("Renew holder and fuse; ask why.")

/* knowledge/checks-look.json: selector-look, title */
N_ ("Mains selector, read its marking")

/* knowledge/checks-look.json: selector-look, why */
N_ ("A wrong tap shifts every rail by one ratio.")

/* knowledge/checks-look.json: selector-look, safety */
N_ ("The tap carries mains when plugged in: pull the plug first, read it and leave it as it is.")

/* knowledge/checks-look.json: selector-look, how */
N_ ("Unplug. Find the selector plug or the tap jumper and read it; do not move it.")

/* knowledge/checks-look.json: selector-look, how */
N_ ("Compare it with the local mains voltage.")

/* knowledge/checks-look.json: selector-look, how */
N_ ("Expect the same figure on both.")

/* knowledge/checks-look.json: selector-look, match, title */
N_ ("Matches the local mains")

/* knowledge/checks-look.json: selector-look, match, meaning */
N_ ("The tap is right.")

/* knowledge/checks-look.json: selector-look, wrong, title */
N_ ("Does not match, or missing")

/* knowledge/checks-look.json: selector-look, wrong, meaning */
N_ ("Leave it unplugged and hand the change to a trained person.")

/* knowledge/checks-look.json: earth-continuity, title */
N_ ("Earth continuity")

/* knowledge/checks-look.json: earth-continuity, why */
N_ ("Nothing else is worth measuring while the metal can bite.")

/* knowledge/checks-look.json: earth-continuity, safety */
N_ ("Mains fault likely: pull the plug before the leads go on. If any metal has tingled, do not plug in again to try.")

/* knowledge/checks-look.json: earth-continuity, how */
N_ ("From the plug's earth pin to supply case, coin door, panel metal and, from outside, the monitor's frame.")

/* knowledge/checks-look.json: earth-continuity, how */
N_ ("Expect less than 0.5 Ω to each, the leads taken off.")

/* knowledge/checks-look.json: earth-continuity, good, meaning */
N_ ("The metal is earthed.")

/* knowledge/checks-look.json: earth-continuity, bad, title */
N_ ("Above 1 Ω or open anywhere")

/* knowledge/checks-look.json: earth-continuity, bad, meaning */
N_ ("Stop. Keep it unplugged and have the earth restored by a licensed person.")

/* knowledge/checks-minus.json: m5-terminals-bare, title */
N_ ("−5 V at the terminals, board out")

/* knowledge/checks-minus.json: m5-terminals-bare, why */
N_ ("Missing here, it was lost in the supply; present here, look at the wire or the board.")

/* knowledge/checks-minus.json: m5-terminals-bare, how */
N_ ("Unplug, pull the board, cover the mains screws.")

/* knowledge/checks-minus.json: m5-terminals-bare, how */
N_ ("Meter on DC volts: black lead on the 0 V screw, red lead on the −5 V screw. The reading is negative.")

/* knowledge/checks-minus.json: m5-terminals-bare, how */
N_ ("Switch on, read.")

/* knowledge/checks-minus.json: m5-terminals-bare, how */
N_ ("Expect −4.75 to −5.3 V; with nothing on it, −6 V can be honest.")

/* knowledge/checks-minus.json: m5-terminals-bare, strong, title */
N_ ("More negative than −5.6 V")

/* knowledge/checks-minus.json: m5-terminals-bare, strong, meaning */
N_ ("Common with no load: give it 100 Ω and read again. If it stays, look at the trim.")

/* knowledge/checks-minus.json: m5-terminals-bare, right, title */
N_ ("−5.6 to −4.5 V")

/* knowledge/checks-minus.json: m5-terminals-bare, right, meaning */
N_ ("The supply makes −5 V.")

/* knowledge/checks-minus.json: m5-terminals-bare, weak, title */
N_ ("−4.5 to −1.0 V")

/* knowledge/checks-minus.json: m5-terminals-bare, weak, meaning */
N_ ("Weak with nothing on it: the −5 V part of the supply.")

/* knowledge/checks-minus.json: m5-terminals-bare, gone, title */
N_ ("Above −1.0 V")

/* knowledge/checks-minus.json: m5-terminals-bare, gone, meaning */
N_ ("Lost in the supply. Keep three-rail memory boards out.")

/* knowledge/checks-minus.json: m5-terminals-loaded, title */
N_ ("−5 V at the terminals, running")

/* knowledge/checks-minus.json: m5-terminals-loaded, why */
N_ ("Right here and wrong at the board is the wire; gone only with the board in is the board.")

/* knowledge/checks-minus.json: m5-terminals-loaded, how */
N_ ("Cover the mains screws. Meter on DC volts: black lead on the 0 V screw, red lead on the −5 V screw. The reading is negative.")

/* knowledge/checks-minus.json: m5-terminals-loaded, how */
N_ ("Expect −4.75 to −5.3 V.")

/* knowledge/checks-minus.json: m5-terminals-loaded, strong, title */
N_ ("More negative than −5.5 V")

/* knowledge/checks-minus.json: m5-terminals-loaded, strong, meaning */
N_ ("Strong: nothing draws on it, or the trim is up.")

/* knowledge/checks-minus.json: m5-terminals-loaded, right, title */
N_ ("−5.5 to −4.5 V")

/* knowledge/checks-minus.json: m5-terminals-loaded, right, meaning */
N_ ("The terminals have it. Read the board.")

/* knowledge/checks-minus.json: m5-terminals-loaded, weak, meaning */
N_ ("Pulled down: unplug the board and see whether it returns.")

/* knowledge/checks-minus.json: m5-terminals-loaded, gone, meaning */
N_ ("Gone. Switch off if the board has three-rail memory.")

/* knowledge/checks-minus.json: m5-board-loaded, title */
N_ ("−5 V at the board, running")

/* knowledge/checks-minus.json: m5-board-loaded, why */
N_ ("Three-rail memory is destroyed when it runs without this rail.")

/* knowledge/checks-minus.json: m5-board-loaded, how */
N_ ("Unplugged, meter on DC volts: clip black to a ground finger and red to the −5 V finger on the board's side. The reading is negative.")

/* knowledge/checks-minus.json: m5-board-loaded, how */
N_ ("Switch on, read at once.")

/* knowledge/checks-minus.json: m5-board-loaded, how */
N_ ("Less than 4 V on a board with three-rail memory: switch off.")

/* knowledge/checks-minus.json: m5-board-loaded, how */
N_ ("Expect −5.0 V, give or take 0.2 V.")

/* knowledge/checks-minus.json: m5-board-loaded, strong, meaning */
N_ ("Strong: the trim is up, or nothing draws on it.")

/* knowledge/checks-minus.json: m5-board-loaded, right, meaning */
N_ ("−5 V is there.")

/* knowledge/checks-minus.json: m5-board-loaded, weak, meaning */
N_ ("Weak: pulled down by the board, or failing in the supply.")

/* knowledge/checks-minus.json: m5-board-loaded, gone, title */
N_ ("−1.0 to +0.2 V")

/* knowledge/checks-minus.json: m5-board-loaded, gone, meaning */
N_ ("Gone. Switch off, read the terminals with the board out.")

/* knowledge/checks-minus.json: m5-board-loaded, lifted, title */
N_ ("+0.2 to +2.0 V")

/* knowledge/checks-minus.json: m5-board-loaded, lifted, meaning */
N_ ("The wire is open and the chips push it up. Switch off.")

/* knowledge/checks-minus.json: m5-board-loaded, reversed, title */
N_ ("+2.0 V or more")

/* knowledge/checks-minus.json: m5-board-loaded, reversed, meaning */
N_ ("Leads swapped, or the wrong finger. If not, switch off: the plug is on wrong.")

/* knowledge/checks-minus.json: m5-ripple-board, title */
N_ ("Ripple on −5 V at the board")

/* knowledge/checks-minus.json: m5-ripple-board, why */
N_ ("Bias that ripples makes memory forget and op-amps hum.")

/* knowledge/checks-minus.json: m5-ripple-board, how */
N_ ("Meter on AC volts or millivolts, leads clipped to the −5 V finger and ground on the board's side.")

/* knowledge/checks-minus.json: m5-ripple-board, how */
N_ ("Read, swap the leads, read again.")

/* knowledge/checks-minus.json: m5-ripple-board, quiet, title */
N_ ("Below 20 mV")

/* knowledge/checks-minus.json: m5-ripple-board, quiet, meaning */
N_ ("Quiet.")

/* knowledge/checks-minus.json: m5-ripple-board, raised, title */
N_ ("20 to 50 mV")

/* knowledge/checks-minus.json: m5-ripple-board, raised, meaning */
N_ ("More than it should be.")

/* knowledge/checks-minus.json: m5-ripple-board, bad, title */
N_ ("50 mV or more")

/* knowledge/checks-minus.json: m5-ripple-board, bad, meaning */
N_ ("The −5 V filtering has failed; above 1 V it is the meter's mode.")

/* knowledge/checks-minus.json: m12-terminals-bare, title */
N_ ("−12 V at the terminals, board out")

/* knowledge/checks-minus.json: m12-terminals-bare, why */
N_ ("Missing here, it was lost in the supply.")

/* knowledge/checks-minus.json: m12-terminals-bare, how */
N_ ("Meter on DC volts: black lead on the 0 V screw, red lead on the −12 V screw. The reading is negative.")

/* knowledge/checks-minus.json: m12-terminals-bare, how */
N_ ("Expect −11.4 to −12.8 V.")

/* knowledge/checks-minus.json: m12-terminals-bare, strong, title */
N_ ("More negative than −13.2 V")

/* knowledge/checks-minus.json: m12-terminals-bare, right, title */
N_ ("−13.2 to −10.8 V")

/* knowledge/checks-minus.json: m12-terminals-bare, right, meaning */
N_ ("−12 V is there.")

/* knowledge/checks-minus.json: m12-terminals-bare, weak, title */
N_ ("−10.8 to −3.0 V")

/* knowledge/checks-minus.json: m12-terminals-bare, weak, meaning */
N_ ("Weak: pulled down, or failing in the supply.")

/* knowledge/checks-minus.json: m12-terminals-bare, gone, title */
N_ ("Above −3.0 V")

/* knowledge/checks-minus.json: m12-terminals-bare, gone, meaning */
N_ ("Gone: op-amps and whatever is made from it stand still.")

/* knowledge/checks-minus.json: m12-board-loaded, title */
N_ ("−12 V at the board, running")

/* knowledge/checks-minus.json: m12-board-loaded, why */
N_ ("Op-amps and small regulators on the board need it.")

/* knowledge/checks-minus.json: m12-board-loaded, how */
N_ ("Meter on DC volts: clip black to a ground finger and red to the −12 V finger on the board's side. The reading is negative.")

/* knowledge/checks-minus.json: m12-board-loaded, how */
N_ ("Expect −12 V, give or take a tenth of it.")

/* knowledge/checks-other.json: bars-board-out, title */
N_ ("Bars and grey with the game board out")

/* knowledge/checks-other.json: bars-board-out, why */
N_ ("What stays without the game board belongs to the monitor.")

/* knowledge/checks-other.json: bars-board-out, safety */
N_ ("A picture tube holds more than 20 000 V, even unplugged: stay outside the monitor and keep hands clear of neck, red lead and chassis.")

/* knowledge/checks-other.json: bars-board-out, how */
N_ ("Trained person for the monitor's controls; everyone else only looks at the front.")

/* knowledge/checks-other.json: bars-board-out, how */
N_ ("Power off, unplug the game board, power on; brightness up until the screen is grey.")

/* knowledge/checks-other.json: bars-board-out, how */
N_ ("Look for the wave or the bar, and at the grey itself.")

/* knowledge/checks-other.json: bars-board-out, how */
N_ ("Expect a plain, even grey.")

/* knowledge/checks-other.json: bars-board-out, without, title */
N_ ("There were no bars before")

/* knowledge/checks-other.json: bars-board-out, without, meaning */
N_ ("Nothing to tell.")

/* knowledge/checks-other.json: bars-board-out, gone, title */
N_ ("The bars are gone")

/* knowledge/checks-other.json: bars-board-out, gone, meaning */
N_ ("Board, ground or rail ripple, not the monitor.")

/* knowledge/checks-other.json: bars-board-out, stays, title */
N_ ("The bars stay")

/* knowledge/checks-other.json: bars-board-out, stays, meaning */
N_ ("The monitor's own filter.")

/* knowledge/checks-other.json: bars-board-out, dim, title */
N_ ("The grey is dim or tinted, no bars")

/* knowledge/checks-other.json: bars-board-out, dim, meaning */
N_ ("The monitor's own tube or drive, whatever the board does. For a trained person.")

/* knowledge/checks-other.json: video-ground, title */
N_ ("Video ground, outside the monitor")

/* knowledge/checks-other.json: video-ground, why */
N_ ("A weak picture return bends and tears the picture.")

/* knowledge/checks-other.json: video-ground, how */
N_ ("Trained person; learn first whether this monitor's chassis stands at mains voltage.")

/* knowledge/checks-other.json: video-ground, how */
N_ ("At the harness plug, outside the monitor: DC millivolts from video ground to a ground finger of the board, running.")

/* knowledge/checks-other.json: video-ground, how */
N_ ("Unplugged: ohms along sync, colour and video ground wires.")

/* knowledge/checks-other.json: video-ground, how */
N_ ("Expect less than 30 mV and less than 0.3 Ω.")

/* knowledge/checks-other.json: video-ground, good, title */
N_ ("Below 30 mV and below 0.3 Ω")

/* knowledge/checks-other.json: video-ground, good, meaning */
N_ ("Video ground and sync are good.")

/* knowledge/checks-other.json: video-ground, bad, title */
N_ ("More, or open")

/* knowledge/checks-other.json: video-ground, bad, meaning */
N_ ("Restore the wire or pin.")

/* knowledge/checks-other.json: panel-ground-drop, title */
N_ ("Control inputs, idle and pressed")

/* knowledge/checks-other.json: panel-ground-drop, why */
N_ ("A pressed button must pull its line to ground, and one that is let go must let it rise.")

/* knowledge/checks-other.json: panel-ground-drop, how */
N_ ("Meter on DC volts, black lead on a ground finger of the board.")

/* knowledge/checks-other.json: panel-ground-drop, how */
N_ ("Red lead on the input pin of a switch that fails, at the harness. Read idle, then pressed; do the same at the last switch of the chain.")

/* knowledge/checks-other.json: panel-ground-drop, how */
N_ ("A coin switch is read the same way.")

/* knowledge/checks-other.json: panel-ground-drop, how */
N_ ("Expect 4.5 to 5.0 V idle and less than 0.3 V pressed.")

/* knowledge/checks-other.json: panel-ground-drop, good, title */
N_ ("Near 5 V idle, below 0.3 V pressed")

/* knowledge/checks-other.json: panel-ground-drop, good, meaning */
N_ ("Switches and ground chain are good.")

/* knowledge/checks-other.json: panel-ground-drop, bad, title */
N_ ("0.3 V or more pressed, several switches")

/* knowledge/checks-other.json: panel-ground-drop, bad, meaning */
N_ ("The ground chain is open or weak: feed it from both ends.")

/* knowledge/checks-other.json: panel-ground-drop, one, title */
N_ ("Wrong at one switch only")

/* knowledge/checks-other.json: panel-ground-drop, one, meaning */
N_ ("That switch or its own wire: clean or renew it. A pin that never leaves 5 V is open, one that never rises is stuck.")

/* knowledge/checks-other.json: meter-self-check, title */
N_ ("Check the meter itself")

/* knowledge/checks-other.json: meter-self-check, why */
N_ ("One minute, before you doubt the cabinet.")

/* knowledge/checks-other.json: meter-self-check, how */
N_ ("Meter on ohms, leads together: below 0.3 Ω, steady. On DC volts, leads together: 0.000.")

/* knowledge/checks-other.json: meter-self-check, how */
N_ ("A fresh battery reads what it should; the same point twice differs by two counts at most.")

/* knowledge/checks-other.json: meter-self-check, how */
N_ ("Leads in the volt jacks, battery sign off.")

/* knowledge/checks-other.json: meter-self-check, how */
N_ ("Expect nothing to be off.")

/* knowledge/checks-other.json: meter-self-check, passes, title */
N_ ("All as it should be")

/* knowledge/checks-other.json: meter-self-check, passes, meaning */
N_ ("Trust the meter.")

/* knowledge/checks-other.json: meter-self-check, fails, title */
N_ ("Anything off")

/* knowledge/checks-other.json: meter-self-check, fails, meaning */
N_ ("Battery, leads or meter first; then take the odd readings again.")

/* knowledge/checks-plus12.json: p12-terminals-bare, title */
N_ ("+12 V at the terminals, board out")

/* knowledge/checks-plus12.json: p12-terminals-bare, why */
N_ ("Shows whether the supply makes +12 V at all.")

/* knowledge/checks-plus12.json: p12-terminals-bare, how */
N_ ("Meter on DC volts: black lead on the 0 V screw, red lead on the +12 V screw, switch on.")

/* knowledge/checks-plus12.json: p12-terminals-bare, how */
N_ ("Read.")

/* knowledge/checks-plus12.json: p12-terminals-bare, how */
N_ ("Expect 11.4 to 12.8 V; with nothing on +5 V it may honestly sink to 8 V.")

/* knowledge/checks-plus12.json: p12-terminals-bare, gone, title */
N_ ("Below 6.0 V")

/* knowledge/checks-plus12.json: p12-terminals-bare, gone, meaning */
N_ ("The supply does not make it, unless +5 V is missing too: then start there.")

/* knowledge/checks-plus12.json: p12-terminals-bare, low, title */
N_ ("6.0 to 11.4 V")

/* knowledge/checks-plus12.json: p12-terminals-bare, low, meaning */
N_ ("No proof of a fault: with no load on +5 V it may sink to 8 V. Read it again running.")

/* knowledge/checks-plus12.json: p12-terminals-bare, right, title */
N_ ("11.4 to 12.8 V")

/* knowledge/checks-plus12.json: p12-terminals-bare, right, meaning */
N_ ("The supply makes +12 V.")

/* knowledge/checks-plus12.json: p12-terminals-bare, high, title */
N_ ("12.8 V or more")

/* knowledge/checks-plus12.json: p12-terminals-bare, high, meaning */
N_ ("High: look at +5 V and the trim before a board goes in.")

/* knowledge/checks-plus12.json: p12-terminals-loaded, title */
N_ ("+12 V at the terminals, running")

/* knowledge/checks-plus12.json: p12-terminals-loaded, why */
N_ ("Tells a lost +12 V from a lost wire.")

/* knowledge/checks-plus12.json: p12-terminals-loaded, how */
N_ ("Cover the mains screws. Meter on DC volts: black lead on the 0 V screw, red lead on the +12 V screw.")

/* knowledge/checks-plus12.json: p12-terminals-loaded, how */
N_ ("Read with the game running, once quiet and once loud.")

/* knowledge/checks-plus12.json: p12-terminals-loaded, how */
N_ ("Expect 11.4 to 12.8 V, less than 0.5 V lower when loud.")

/* knowledge/checks-plus12.json: p12-terminals-loaded, gone, meaning */
N_ ("+12 V is missing: read it with its loads unplugged, then at the other end of the wire.")

/* knowledge/checks-plus12.json: p12-terminals-loaded, low, meaning */
N_ ("Low: the trim, an overload, or the +12 V side of the supply.")

/* knowledge/checks-plus12.json: p12-terminals-loaded, right, meaning */
N_ ("+12 V is where it belongs.")

/* knowledge/checks-plus12.json: p12-terminals-loaded, high, meaning */
N_ ("High: the trim is up, or +12 V has little load while +5 V works hard.")

/* knowledge/checks-plus12.json: p12-board-loaded, title */
N_ ("+12 V at the board, running")

/* knowledge/checks-plus12.json: p12-board-loaded, why */
N_ ("Sound and old memory hang on this rail, and it moves with the trim.")

/* knowledge/checks-plus12.json: p12-board-loaded, how */
N_ ("Meter on DC volts: clip black to a ground finger and red to the +12 V finger, on the board's side.")

/* knowledge/checks-plus12.json: p12-board-loaded, how */
N_ ("Expect 12.0 V, give or take 0.5 V.")

/* knowledge/checks-plus12.json: p12-ripple-board, title */
N_ ("Ripple on +12 V at the board")

/* knowledge/checks-plus12.json: p12-ripple-board, why */
N_ ("Hum that the volume control does not change enters through this rail.")

/* knowledge/checks-plus12.json: p12-ripple-board, how */
N_ ("Meter on AC volts, leads clipped to the +12 V finger and ground on the board's side. Volume at zero.")

/* knowledge/checks-plus12.json: p12-ripple-board, how */
N_ ("Expect 5 to 30 mV.")

/* knowledge/checks-plus12.json: p12-ripple-board, quiet, meaning */
N_ ("Quiet: the hum does not come in here.")

/* knowledge/checks-plus12.json: p12-ripple-board, raised, meaning */
N_ ("More than a regulated rail should show.")

/* knowledge/checks-plus12.json: p12-ripple-board, bad, title */
N_ ("100 mV to 2 V")

/* knowledge/checks-plus12.json: p12-ripple-board, bad, meaning */
N_ ("The filtering of +12 V has failed, in the supply or at the amplifier.")

/* knowledge/checks-plus12.json: p12-ripple-board, nonsense, title */
N_ ("2 V or more")

/* knowledge/checks-plus12.json: p12-ripple-board, nonsense, meaning */
N_ ("That is the DC, not the ripple: wrong mode, or a meter that cannot block DC.")

/* knowledge/checks-plus12.json: p24-terminals-bare, title */
N_ ("+24 V at the terminals, board out")

/* knowledge/checks-plus12.json: p24-terminals-bare, why */
N_ ("Missing here, it was lost in the supply or its fuse.")

/* knowledge/checks-plus12.json: p24-terminals-bare, how */
N_ ("Meter on DC volts: black lead on the 0 V screw, red lead on the +24 V screw, switch on.")

/* knowledge/checks-plus12.json: p24-terminals-bare, how */
N_ ("Expect 22 to 27 V.")

/* knowledge/checks-plus12.json: p24-terminals-bare, gone, title */
N_ ("Below 10 V")

/* knowledge/checks-plus12.json: p24-terminals-bare, gone, meaning */
N_ ("+24 V is missing: its fuse, then the supply.")

/* knowledge/checks-plus12.json: p24-terminals-bare, low, title */
N_ ("10 to 22 V")

/* knowledge/checks-plus12.json: p24-terminals-bare, low, meaning */
N_ ("Low: overload, or the +24 V side of the supply.")

/* knowledge/checks-plus12.json: p24-terminals-bare, right, title */
N_ ("22 to 27 V")

/* knowledge/checks-plus12.json: p24-terminals-bare, right, meaning */
N_ ("+24 V is there.")

/* knowledge/checks-plus12.json: p24-terminals-bare, high, title */
N_ ("27 V or more")

/* knowledge/checks-plus12.json: p24-terminals-bare, high, meaning */
N_ ("High: it may pass what the sound chip allows. Turn the volume down and look at the trim.")

/* knowledge/checks-plus12.json: p24-board-loaded, title */
N_ ("+24 V at the board, running")

/* knowledge/checks-plus12.json: p24-board-loaded, why */
N_ ("Feeds the sound amplifier, lockouts and counters.")

/* knowledge/checks-plus12.json: p24-board-loaded, how */
N_ ("Meter on DC volts: clip black to a ground finger and red to the +24 V finger on the board's side.")

/* knowledge/checks-plus12.json: p24-board-loaded, how */
N_ ("Read, once quiet and once loud.")

/* knowledge/checks-plus12.json: p24-board-loaded, how */
N_ ("Expect 22 to 27 V, and never more than the sound chip allows.")

/* knowledge/checks-plus5-board.json: p5-board-loaded, title */
N_ ("+5 V at the board, running")

/* knowledge/checks-plus5-board.json: p5-board-loaded, why */
N_ ("This is the voltage the logic lives on; every repair is judged by it.")

/* knowledge/checks-plus5-board.json: p5-board-loaded, how */
N_ ("Unplugged, meter on DC volts: clip the black lead to a ground finger and the red lead to a +5 V finger, both on the board's side.")

/* knowledge/checks-plus5-board.json: p5-board-loaded, how */
N_ ("Switch on and let the game run.")

/* knowledge/checks-plus5-board.json: p5-board-loaded, how */
N_ ("Read. Switch off if it is above 5.5 V or below 4.0 V.")

/* knowledge/checks-plus5-board.json: p5-board-loaded, how */
N_ ("Expect 4.95 to 5.10 V, unless the machine's own papers ask for something else.")

/* knowledge/checks-plus5-board.json: p5-board-loaded, gone, title */
N_ ("Below 4.0 V")

/* knowledge/checks-plus5-board.json: p5-board-loaded, gone, meaning */
N_ ("No usable +5 V reaches the board: go back to the terminals, board out.")

/* knowledge/checks-plus5-board.json: p5-board-loaded, low, title */
N_ ("4.0 to 4.80 V")

/* knowledge/checks-plus5-board.json: p5-board-loaded, low, meaning */
N_ ("Too low to run by. Read the terminals next: low there is the supply, right there is the wiring.")

/* knowledge/checks-plus5-board.json: p5-board-loaded, marginal, title */
N_ ("4.80 to 4.90 V")

/* knowledge/checks-plus5-board.json: p5-board-loaded, marginal, meaning */
N_ ("On the fence: some boards run, some reset. Measure the drops before touching the trim.")

/* knowledge/checks-plus5-board.json: p5-board-loaded, right, title */
N_ ("4.90 to 5.20 V")

/* knowledge/checks-plus5-board.json: p5-board-loaded, right, meaning */
N_ ("The board is fed. Look beyond the DC value: dips, ripple, the board itself.")

/* knowledge/checks-plus5-board.json: p5-board-loaded, high, title */
N_ ("5.20 V or more")

/* knowledge/checks-plus5-board.json: p5-board-loaded, high, meaning */
N_ ("Too high. Turn it back and look for the reason it was raised.")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, title */
N_ ("+5 V at a far chip, running")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, why */
N_ ("What the edge has is not yet what the last chip gets.")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, how */
N_ ("Choose a logic chip far from the edge. Plus is usually the last pin, ground the opposite corner; memory with three rails differs.")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, how */
N_ ("With power off, meter on DC volts, clip the leads on; a slipped probe kills chips.")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, how */
N_ ("Switch on and read. Compare with the edge.")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, how */
N_ ("Expect 0.02 to 0.08 V less than at the edge, and 4.90 V or more.")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, low, title */
N_ ("Below 4.75 V")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, low, meaning */
N_ ("Below what the chips are made for. If the edge is right, the loss is on the board.")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, marginal, title */
N_ ("4.75 to 4.90 V")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, marginal, meaning */
N_ ("On the fence. More than 0.10 V below the edge means a trace, jumper or ribbon.")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, right, meaning */
N_ ("The board carries its +5 V well.")

/* knowledge/checks-plus5-board.json: p5-chip-loaded, high, meaning */
N_ ("Too high at the chips: turn the trim back.")

/* knowledge/checks-plus5-board.json: p5-ripple-board, title */
N_ ("Ripple on +5 V at the board")

/* knowledge/checks-plus5-board.json: p5-ripple-board, why */
N_ ("More here than at the terminals is noise on the ground path.")

/* knowledge/checks-plus5-board.json: p5-ripple-board, how */
N_ ("Meter on AC volts or millivolts, leads clipped to +5 V and ground on the board.")

/* knowledge/checks-plus5-board.json: p5-ripple-board, how */
N_ ("Read with the game running, then swap the leads and read again.")

/* knowledge/checks-plus5-board.json: p5-ripple-board, how */
N_ ("Expect 5 to 30 mV, hardly more than at the terminals.")

/* knowledge/checks-plus5-board.json: p5-ripple-board, quiet, title */
N_ ("Below 30 mV")

/* knowledge/checks-plus5-board.json: p5-ripple-board, quiet, meaning */
N_ ("Quiet as far as a meter can see. On a switcher that is weak evidence: much of its ripple is too fast for the meter.")

/* knowledge/checks-plus5-board.json: p5-ripple-board, raised, title */
N_ ("30 to 60 mV")

/* knowledge/checks-plus5-board.json: p5-ripple-board, raised, meaning */
N_ ("More than it should be. Compare with a good machine, or with the other end of the wires.")

/* knowledge/checks-plus5-board.json: p5-ripple-board, bad, title */
N_ ("60 mV to 1 V")

/* knowledge/checks-plus5-board.json: p5-ripple-board, bad, meaning */
N_ ("The filtering has failed: capacitors or bridge; the ground path when the terminals are quiet.")

/* knowledge/checks-plus5-board.json: p5-ripple-board, nonsense, title */
N_ ("1 V or more")

/* knowledge/checks-plus5-board.json: p5-ripple-board, nonsense, meaning */
N_ ("That is the DC, not the ripple: wrong mode, or a meter that cannot block DC. Swap the leads; if the value changes, distrust it.")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, title */
N_ ("Lowest +5 V while it resets")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, why */
N_ ("A reset without a dip is not the power.")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, how */
N_ ("Meter on DC volts, clipped to +5 V and ground on the board; hands off. Start MIN/MAX.")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, how */
N_ ("Wait for a reset, or bring it on, then read the lowest value.")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, how */
N_ ("A handheld meter sees a tenth of a second; a shorter dip shows as a few tens of millivolts.")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, how */
N_ ("Expect 4.85 V or more at its lowest.")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, dip, title */
N_ ("Falls below 4.75 V")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, dip, meaning */
N_ ("Power or wiring: it dips, and the reset follows.")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, small, title */
N_ ("Falls a little, at each reset")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, small, meaning */
N_ ("A short dip, seen through a slow meter: suspect joints and capacitors.")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, none, title */
N_ ("No fall at all")

/* knowledge/checks-plus5-board.json: p5-minmax-reset, none, meaning */
N_ ("Logic, watchdog or memory, unless the dip was too short to see.")

/* knowledge/checks-plus5-board.json: warm-up-drift, title */
N_ ("+5 V cold and after half an hour")

/* knowledge/checks-plus5-board.json: warm-up-drift, why */
N_ ("Shows what only happens warm, and on which side.")

/* knowledge/checks-plus5-board.json: warm-up-drift, how */
N_ ("Cover the mains screws and leave the cover on. Meter on DC volts. From cold, note +5 V at board and terminals.")

/* knowledge/checks-plus5-board.json: warm-up-drift, how */
N_ ("Note both again after 5, 15 and 30 minutes.")

/* knowledge/checks-plus5-board.json: warm-up-drift, how */
N_ ("Expect 0.03 V of change or less; 0.08 V is too much.")

/* knowledge/checks-plus5-board.json: warm-up-drift, steady, title */
N_ ("Moves less than 0.08 V")

/* knowledge/checks-plus5-board.json: warm-up-drift, steady, meaning */
N_ ("Nothing drifts.")

/* knowledge/checks-plus5-board.json: warm-up-drift, both, title */
N_ ("Terminals and board fall together")

/* knowledge/checks-plus5-board.json: warm-up-drift, both, meaning */
N_ ("The supply: heat, capacitors or its reference.")

/* knowledge/checks-plus5-board.json: warm-up-drift, board, title */
N_ ("Only the board falls")

/* knowledge/checks-plus5-board.json: warm-up-drift, board, meaning */
N_ ("A contact heats up on the way: find it.")

/* knowledge/checks-plus5-board.json: p5-current, title */
N_ ("Current on +5 V")

/* knowledge/checks-plus5-board.json: p5-current, why */
N_ ("Says whether the supply is small, or the board greedy.")

/* knowledge/checks-plus5-board.json: p5-current, how */
N_ ("On the board's side, clamp a DC current meter round the +5 V wires, or read the millivolts over a known length: 1 m of 18 AWG shows 21 mV for each ampere.")

/* knowledge/checks-plus5-board.json: p5-current, how */
N_ ("Read with the game running; compare with the supply's label.")

/* knowledge/checks-plus5-board.json: p5-current, how */
N_ ("Never put the meter in series: its leads alone make a good board reset.")

/* knowledge/checks-plus5-board.json: p5-current, how */
N_ ("Expect 1.5 to 6 A, less than four fifths of the label.")

/* knowledge/checks-plus5-board.json: p5-current, normal, title */
N_ ("Well below the label")

/* knowledge/checks-plus5-board.json: p5-current, normal, meaning */
N_ ("The supply has room.")

/* knowledge/checks-plus5-board.json: p5-current, near, title */
N_ ("Near the label or above")

/* knowledge/checks-plus5-board.json: p5-current, near, meaning */
N_ ("Overloaded: split the load, or a bigger supply.")

/* knowledge/checks-plus5-board.json: p5-current, none, title */
N_ ("Next to nothing")

/* knowledge/checks-plus5-board.json: p5-current, none, meaning */
N_ ("The board draws nothing: no power, or an open path on the board.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, title */
N_ ("+5 V at the terminals, board out")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, why */
N_ ("Proves the supply harmless before a board is risked on it.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, how */
N_ ("Unplug, pull the board's connector and cover the mains screws.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, how */
N_ ("Meter on DC volts: black lead on the 0 V screw, red lead on the +5 V screw, then switch on.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, how */
N_ ("Read within five seconds; switch off at once if it passes 5.6 V.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, how */
N_ ("Expect 4.95 to 5.25 V from a linear supply; a switcher with no load may stand anywhere from 4.8 to 5.4 V.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, gone, title */
N_ ("Below 1.0 V")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, gone, meaning */
N_ ("Nothing comes out: fuse, mains path, tripped protection or a supply that will not start. A ticking supply may only lack its minimum load.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, low, title */
N_ ("1.0 to 4.80 V")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, low, meaning */
N_ ("Low or restless. Put a dummy load on before you blame it.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, right, title */
N_ ("4.80 to 5.40 V")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, right, meaning */
N_ ("The supply can do it with no load. Fit the board next.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, high, title */
N_ ("5.40 to 5.60 V")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, high, meaning */
N_ ("High: trim or sense wires. Turn it down before the board goes in.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, over, title */
N_ ("5.60 V or more")

/* knowledge/checks-plus5-terminals.json: p5-terminals-bare, over, meaning */
N_ ("Do not fit a board. Trim, sense wires or regulator first.")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, title */
N_ ("+5 V with a dummy load, board out")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, why */
N_ ("Separates a bad supply from one that only missed its minimum load.")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, how */
N_ ("Unplug, pull the board. Screw a 5 Ω 10 W resistor from +5 V to 0 V; keep it clear of wires, it gets hot.")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, how */
N_ ("Cover the mains screws, meter on DC volts, switch on, read +5 V at the terminals.")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, how */
N_ ("Compare with the reading without load.")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, how */
N_ ("Expect 4.95 to 5.20 V, less than 0.10 V from the reading without load.")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, steady, title */
N_ ("4.95 to 5.40 V, moved less than 0.10 V")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, steady, meaning */
N_ ("The supply holds. Go on to the board.")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, low, title */
N_ ("Steady but below 4.95 V")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, low, meaning */
N_ ("It holds, only set low: the trim.")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, falls, title */
N_ ("Fell more than 0.15 V, or restless")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, falls, meaning */
N_ ("It cannot hold one ampere: capacitors, regulator or bridge.")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, starts, title */
N_ ("Odd before, right with the load")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, starts, meaning */
N_ ("It only missed its minimum load.")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, dead, title */
N_ ("Still nothing, or ticking")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, dead, meaning */
N_ ("It will not start: fuse, mains path, protection, or the supply itself.")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, over, title */
N_ ("Above 5.40 V")

/* knowledge/checks-plus5-terminals.json: p5-dummy-load, over, meaning */
N_ ("Too high: trim, sense wires or pass transistor. Keep the board out.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, title */
N_ ("+5 V at the terminals, running")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, why */
N_ ("With the board's reading it splits supply from wiring in five minutes.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, how */
N_ ("Cover the mains screws. Meter on DC volts: black lead on the 0 V screw, red lead on the +5 V screw.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, how */
N_ ("Set it beside the reading at the board: the difference is what the wiring eats.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, how */
N_ ("Expect 5.05 to 5.25 V, never more than 5.30 V.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, gone, meaning */
N_ ("The supply gives up under this load: look for a short, a fuse, or a supply that will not start.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, low, title */
N_ ("4.0 to 4.95 V")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, low, meaning */
N_ ("Low at its own terminals: trim, overload or what feeds it.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, right, title */
N_ ("4.95 to 5.30 V")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, right, meaning */
N_ ("The supply does its part. If the board is low, it is the wiring.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, high, title */
N_ ("5.30 to 5.60 V")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, high, meaning */
N_ ("High: somebody turned up the trim to hide a drop, or a sense wire is open. Do not turn further.")

/* knowledge/checks-plus5-terminals.json: p5-terminals-loaded, over, meaning */
N_ ("Switch off and take the board out.")

/* knowledge/checks-plus5-terminals.json: p5-ripple-terminals, title */
N_ ("Ripple on +5 V at the terminals")

/* knowledge/checks-plus5-terminals.json: p5-ripple-terminals, why */
N_ ("Memory fails on ripple that the DC reading hides.")

/* knowledge/checks-plus5-terminals.json: p5-ripple-terminals, how */
N_ ("Cover the mains screws. Meter on AC volts or millivolts, leads on the +5 V and 0 V screws.")

/* knowledge/checks-plus5-terminals.json: p5-ripple-terminals, how */
N_ ("Swap the leads and read again: an honest meter shows the same.")

/* knowledge/checks-plus5-terminals.json: p5-ripple-terminals, how */
N_ ("Expect 1 to 5 mV from a linear supply, 5 to 20 mV from a switcher.")

/* knowledge/checks-plus5-terminals.json: p5-ripple-terminals, bad, title */
N_ ("50 mV to 1 V")

/* knowledge/checks-plus5-terminals.json: p5-ripple-terminals, bad, meaning */
N_ ("The filtering has failed: capacitors or bridge.")

/* knowledge/checks-plus5-terminals.json: trim-response, title */
N_ ("Does the trim answer?")

/* knowledge/checks-plus5-terminals.json: trim-response, why */
N_ ("A trim that jumps or does nothing is a fault of its own.")

/* knowledge/checks-plus5-terminals.json: trim-response, how */
N_ ("Cover the mains screws; meter on DC volts, clipped to +5 V and ground on the board.")

/* knowledge/checks-plus5-terminals.json: trim-response, how */
N_ ("Note where the screw stands. With an insulated driver turn it for 0.05 V up, then back.")

/* knowledge/checks-plus5-terminals.json: trim-response, how */
N_ ("Watch: does the rail follow smoothly?")

/* knowledge/checks-plus5-terminals.json: trim-response, how */
N_ ("Expect a smooth climb, with +12 V going about 2.3 times as far where the trim moves it.")

/* knowledge/checks-plus5-terminals.json: trim-response, smooth, title */
N_ ("Follows smoothly")

/* knowledge/checks-plus5-terminals.json: trim-response, smooth, meaning */
N_ ("The trim and the regulation work.")

/* knowledge/checks-plus5-terminals.json: trim-response, jumps, title */
N_ ("Jumps or crackles")

/* knowledge/checks-plus5-terminals.json: trim-response, jumps, meaning */
N_ ("The trim is dirty or worn.")

/* knowledge/checks-plus5-terminals.json: trim-response, none, title */
N_ ("Hardly moves, or wanders")

/* knowledge/checks-plus5-terminals.json: trim-response, none, meaning */
N_ ("Not in control: sense wires, regulator, overload, or too little mains.")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, title */
N_ ("Raw sound rail at the terminals, running")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, why */
N_ ("Missing here, it is fuse, winding or bridge, not the wire.")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, how */
N_ ("Cover the mains parts. Meter on DC volts: black lead on the 0 V screw, red lead on the raw sound rail.")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, how */
N_ ("Read with the volume low.")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, how */
N_ ("Expect 10.8 to 15 V, lower as the load grows.")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, gone, meaning */
N_ ("The raw sound rail is missing: its fuse, its winding, its bridge.")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, low, title */
N_ ("4.0 to 10.8 V")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, low, meaning */
N_ ("Low: tired filter, a bad amplifier, low mains or half the bridge.")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, right, title */
N_ ("10.8 to 15.0 V")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, right, meaning */
N_ ("As an unregulated rail should be; it sinks as the sound gets loud.")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, high, title */
N_ ("15.0 V or more")

/* knowledge/checks-raw12.json: raw12-terminals-loaded, high, meaning */
N_ ("High: little load, or the wrong mains tap. Check what the sound chip allows.")

/* knowledge/checks-raw12.json: raw12-board-loaded, title */
N_ ("Raw sound rail at the board, running")

/* knowledge/checks-raw12.json: raw12-board-loaded, why */
N_ ("The amplifier lives on it; hum and weak sound start here.")

/* knowledge/checks-raw12.json: raw12-board-loaded, how */
N_ ("Meter on DC volts: clip black to a ground finger and red to the raw sound rail on the board, at the amplifier or the edge.")

/* knowledge/checks-raw12.json: raw12-board-loaded, how */
N_ ("Expect 10.8 to 15 V.")

/* knowledge/checks-raw12.json: raw12-ripple-board, title */
N_ ("Ripple on the raw sound rail")

/* knowledge/checks-raw12.json: raw12-ripple-board, why */
N_ ("Too much ripple here is the hum you hear at volume zero.")

/* knowledge/checks-raw12.json: raw12-ripple-board, how */
N_ ("Meter on AC volts, leads clipped to the raw rail and ground on the board. Volume at zero.")

/* knowledge/checks-raw12.json: raw12-ripple-board, how */
N_ ("Read; a raw rail ripples by nature.")

/* knowledge/checks-raw12.json: raw12-ripple-board, how */
N_ ("Expect 0.1 to 0.6 V.")

/* knowledge/checks-raw12.json: raw12-ripple-board, usual, title */
N_ ("Below 0.70 V")

/* knowledge/checks-raw12.json: raw12-ripple-board, usual, meaning */
N_ ("Usual for an unregulated rail.")

/* knowledge/checks-raw12.json: raw12-ripple-board, raised, title */
N_ ("0.70 to 1.0 V")

/* knowledge/checks-raw12.json: raw12-ripple-board, raised, meaning */
N_ ("More than usual: a tired filter capacitor, or a heavy load.")

/* knowledge/checks-raw12.json: raw12-ripple-board, large, title */
N_ ("1.0 V or more")

/* knowledge/checks-raw12.json: raw12-ripple-board, large, meaning */
N_ ("Filter capacitor or half the bridge. With a frequency range: mains frequency means half the bridge, twice that the capacitor.")

/* knowledge/checks-sound.json: hum-volume-zero, title */
N_ ("Hum at volume zero")

/* knowledge/checks-sound.json: hum-volume-zero, why */
N_ ("Hum that stays at zero enters behind the volume control.")

/* knowledge/checks-sound.json: hum-volume-zero, how */
N_ ("Turn the volume fully down; listen at a hand's breadth from the speaker.")

/* knowledge/checks-sound.json: hum-volume-zero, how */
N_ ("Turn it up a little: does the hum grow?")

/* knowledge/checks-sound.json: hum-volume-zero, how */
N_ ("Expect next to nothing.")

/* knowledge/checks-sound.json: hum-volume-zero, quiet, title */
N_ ("No hum either way")

/* knowledge/checks-sound.json: hum-volume-zero, quiet, meaning */
N_ ("There is no hum to chase.")

/* knowledge/checks-sound.json: hum-volume-zero, stays, title */
N_ ("Hums at zero")

/* knowledge/checks-sound.json: hum-volume-zero, stays, meaning */
N_ ("Amplifier, its supply or its ground.")

/* knowledge/checks-sound.json: hum-volume-zero, goes, title */
N_ ("Gone at zero, grows with volume")

/* knowledge/checks-sound.json: hum-volume-zero, goes, meaning */
N_ ("It comes in before the volume control: op-amps, their rails, or the game.")

/* knowledge/checks-sound.json: hum-board-out, title */
N_ ("Hum with the game board out")

/* knowledge/checks-sound.json: hum-board-out, why */
N_ ("Splits a hum born on the board from one born beside it.")

/* knowledge/checks-sound.json: hum-board-out, how */
N_ ("Power off, unplug the game board, power on.")

/* knowledge/checks-sound.json: hum-board-out, how */
N_ ("Listen again at a hand's breadth from the speaker.")

/* knowledge/checks-sound.json: hum-board-out, how */
N_ ("Expect silence where the amplifier sits on the board.")

/* knowledge/checks-sound.json: hum-board-out, without, title */
N_ ("There was no hum before")

/* knowledge/checks-sound.json: hum-board-out, gone, title */
N_ ("The hum is gone")

/* knowledge/checks-sound.json: hum-board-out, gone, meaning */
N_ ("It comes with the board: amplifier on the board, or the ground it shares.")

/* knowledge/checks-sound.json: hum-board-out, stays, title */
N_ ("The hum stays")

/* knowledge/checks-sound.json: hum-board-out, stays, meaning */
N_ ("Separate amplifier, its supply or its ground.")

/* knowledge/checks-sound.json: amp-input-short, title */
N_ ("Hum with the amplifier's input shorted")

/* knowledge/checks-sound.json: amp-input-short, why */
N_ ("Clears or blames everything before the amplifier.")

/* knowledge/checks-sound.json: amp-input-short, how */
N_ ("Power off. With the drawing at hand, find the amplifier's input and its own ground.")

/* knowledge/checks-sound.json: amp-input-short, how */
N_ ("Join the two with a short clip lead, power on, listen.")

/* knowledge/checks-sound.json: amp-input-short, how */
N_ ("Expect no hum at all.")

/* knowledge/checks-sound.json: amp-input-short, stops, title */
N_ ("The hum stops")

/* knowledge/checks-sound.json: amp-input-short, stops, meaning */
N_ ("It comes from before the amplifier, or by the ground between.")

/* knowledge/checks-sound.json: amp-input-short, stays, meaning */
N_ ("The amplifier or its supply.")

/* knowledge/checks-sound.json: speaker-dc, title */
N_ ("DC across the speaker")

/* knowledge/checks-sound.json: speaker-dc, why */
N_ ("DC on a speaker convicts the amplifier.")

/* knowledge/checks-sound.json: speaker-dc, how */
N_ ("Meter on DC millivolts across the speaker's terminals, volume at zero.")

/* knowledge/checks-sound.json: speaker-dc, how */
N_ ("More than 0.3 V: unplug the speaker.")

/* knowledge/checks-sound.json: speaker-dc, how */
N_ ("Expect less than 50 mV.")

/* knowledge/checks-sound.json: speaker-dc, none, meaning */
N_ ("The amplifier sits in the middle.")

/* knowledge/checks-sound.json: speaker-dc, some, title */
N_ ("50 mV to 0.3 V")

/* knowledge/checks-sound.json: speaker-dc, some, meaning */
N_ ("Unclean; measure again warm.")

/* knowledge/checks-sound.json: speaker-dc, offset, title */
N_ ("Above 0.3 V")

/* knowledge/checks-sound.json: speaker-dc, offset, meaning */
N_ ("The amplifier is bad. Unplug the speaker.")

/* knowledge/checks-sound.json: audio-ground-drop, title */
N_ ("Drop along the sound ground")

/* knowledge/checks-sound.json: audio-ground-drop, why */
N_ ("Millivolts between two grounds are what you hear.")

/* knowledge/checks-sound.json: audio-ground-drop, how */
N_ ("Meter on AC millivolts, then DC millivolts: amplifier's ground to a ground finger of the board.")

/* knowledge/checks-sound.json: audio-ground-drop, how */
N_ ("Read while the hum or the buzz is there.")

/* knowledge/checks-sound.json: audio-ground-drop, how */
N_ ("Expect less than 5 mV AC and less than 30 mV DC.")

/* knowledge/checks-sound.json: audio-ground-drop, good, title */
N_ ("Below 5 mV AC and 30 mV DC")

/* knowledge/checks-sound.json: audio-ground-drop, good, meaning */
N_ ("The sound ground is good.")

/* knowledge/checks-sound.json: audio-ground-drop, some, title */
N_ ("5 to 20 mV AC")

/* knowledge/checks-sound.json: audio-ground-drop, some, meaning */
N_ ("On the fence: try a temporary heavy wire and listen.")

/* knowledge/checks-sound.json: audio-ground-drop, high, title */
N_ ("Above 20 mV AC")

/* knowledge/checks-sound.json: audio-ground-drop, high, meaning */
N_ ("The sound ground is shared or looped: give it a wire of its own.")

/* knowledge/checks-sound.json: audio-rail-loud, title */
N_ ("Sound rail in a loud passage")

/* knowledge/checks-sound.json: audio-rail-loud, why */
N_ ("A filter that is empty or a load too great shows when it is asked for.")

/* knowledge/checks-sound.json: audio-rail-loud, how */
N_ ("Clip the meter to the rail that feeds the amplifier, DC volts.")

/* knowledge/checks-sound.json: audio-rail-loud, how */
N_ ("Use a steady loud sound from the test mode. Note the fall from quiet to loud.")

/* knowledge/checks-sound.json: audio-rail-loud, how */
N_ ("Expect less than 0.5 V of fall.")

/* knowledge/checks-sound.json: audio-rail-loud, steady, title */
N_ ("Falls less than 0.5 V")

/* knowledge/checks-sound.json: audio-rail-loud, steady, meaning */
N_ ("The sound rail holds.")

/* knowledge/checks-sound.json: audio-rail-loud, sags, title */
N_ ("Falls 0.5 to 1 V")

/* knowledge/checks-sound.json: audio-rail-loud, sags, meaning */
N_ ("On the fence.")

/* knowledge/checks-sound.json: audio-rail-loud, collapses, title */
N_ ("Falls more than 1 V")

/* knowledge/checks-sound.json: audio-rail-loud, collapses, meaning */
N_ ("Filter capacitor, amplifier, or too weak a supply.")

/* knowledge/checks-sound.json: speaker-path, title */
N_ ("Speaker and volume control by ohms")

/* knowledge/checks-sound.json: speaker-path, why */
N_ ("Silence is often only a torn wire.")

/* knowledge/checks-sound.json: speaker-path, how */
N_ ("Unplug. One speaker wire off, meter on ohms across the speaker: listen for the click.")

/* knowledge/checks-sound.json: speaker-path, how */
N_ ("Turn the volume control from end to end and watch the ohms.")

/* knowledge/checks-sound.json: speaker-path, how */
N_ ("Follow the wires to the board.")

/* knowledge/checks-sound.json: speaker-path, how */
N_ ("Expect 4 to 8 Ω, a click and a smooth control.")

/* knowledge/checks-sound.json: speaker-path, good, title */
N_ ("A few ohms, a click, smooth turning")

/* knowledge/checks-sound.json: speaker-path, good, meaning */
N_ ("Speaker and control are good: look at amplifier and its rail.")

/* knowledge/checks-sound.json: speaker-path, bad, title */
N_ ("Open, no click, or jumping")

/* knowledge/checks-sound.json: speaker-path, bad, meaning */
N_ ("Mend speaker, wire or control.")

/* knowledge/checks-supply.json: split-load, title */
N_ ("Unplug the load piece by piece")

/* knowledge/checks-supply.json: split-load, why */
N_ ("An overloaded supply recovers with any half gone, a shorted piece only when it is the one.")

/* knowledge/checks-supply.json: split-load, how */
N_ ("Meter on DC volts, clipped to +5 V and ground at the board's connector.")

/* knowledge/checks-supply.json: split-load, how */
N_ ("Power off, unplug one thing, power on, read: coin door and lamps, sound, second board.")

/* knowledge/checks-supply.json: split-load, how */
N_ ("If +5 V recovers, note with what, and look at the ripple once more.")

/* knowledge/checks-supply.json: split-load, how */
N_ ("Expect a change of 0.15 V at most, whatever is off.")

/* knowledge/checks-supply.json: split-load, same, title */
N_ ("Nothing brings it back")

/* knowledge/checks-supply.json: split-load, same, meaning */
N_ ("It is not the load.")

/* knowledge/checks-supply.json: split-load, any, title */
N_ ("Right again with any piece gone, quiet")

/* knowledge/checks-supply.json: split-load, any, meaning */
N_ ("Too much load for this supply or this wire.")

/* knowledge/checks-supply.json: split-load, ripples, title */
N_ ("Better with any piece gone, still ripples")

/* knowledge/checks-supply.json: split-load, ripples, meaning */
N_ ("The filtering is tired: less load only hides it.")

/* knowledge/checks-supply.json: split-load, board, title */
N_ ("Recovers with one board out")

/* knowledge/checks-supply.json: split-load, board, meaning */
N_ ("That board pulls it down.")

/* knowledge/checks-supply.json: split-load, lamps, title */
N_ ("Recovers with the coin door out")

/* knowledge/checks-supply.json: split-load, lamps, meaning */
N_ ("A lamp socket or coil in the coin door.")

/* knowledge/checks-supply.json: unplug-wait, title */
N_ ("Unplug for five minutes, try again")

/* knowledge/checks-supply.json: unplug-wait, why */
N_ ("A tripped protection forgets after some minutes; a dead supply does not.")

/* knowledge/checks-supply.json: unplug-wait, how */
N_ ("Unplug, take the board out, wait five minutes.")

/* knowledge/checks-supply.json: unplug-wait, how */
N_ ("Plug in, switch on, listen and look for life, hands off.")

/* knowledge/checks-supply.json: unplug-wait, how */
N_ ("Expect it to be as it was before.")

/* knowledge/checks-supply.json: unplug-wait, back, title */
N_ ("It had stopped and now comes back")

/* knowledge/checks-supply.json: unplug-wait, back, meaning */
N_ ("Protection had tripped, or the supply was hot. Find out why.")

/* knowledge/checks-supply.json: unplug-wait, dead, title */
N_ ("Still dead")

/* knowledge/checks-supply.json: unplug-wait, dead, meaning */
N_ ("No trip: fuse, mains path, or the supply itself.")

/* knowledge/checks-supply.json: unplug-wait, alive, title */
N_ ("It had never stopped")

/* knowledge/checks-supply.json: unplug-wait, alive, meaning */
N_ ("This check does not apply.")

/* knowledge/checks-supply.json: supply-heat, title */
N_ ("Fan and heat of the supply")

/* knowledge/checks-supply.json: supply-heat, why */
N_ ("Says whether heat is the trouble or only its sign.")

/* knowledge/checks-supply.json: supply-heat, safety */
N_ ("The case is touched only where it is closed and earthed: inside, heat sinks stand at mains voltage.")

/* knowledge/checks-supply.json: supply-heat, how */
N_ ("Let it run twenty minutes, case closed. Earth continuity must be good.")

/* knowledge/checks-supply.json: supply-heat, how */
N_ ("Feel the air of the fan and, with the back of a finger, the closed case.")

/* knowledge/checks-supply.json: supply-heat, how */
N_ ("Never touch a heat sink inside: it can stand at mains voltage.")

/* knowledge/checks-supply.json: supply-heat, how */
N_ ("Expect moving air and a case below 60 °C.")

/* knowledge/checks-supply.json: supply-heat, cool, title */
N_ ("Warm at most, air moving")

/* knowledge/checks-supply.json: supply-heat, cool, meaning */
N_ ("The supply is at ease.")

/* knowledge/checks-supply.json: supply-heat, hot, title */
N_ ("Too hot to hold, air moving")

/* knowledge/checks-supply.json: supply-heat, hot, meaning */
N_ ("Overloaded, set high, or tired inside.")

/* knowledge/checks-supply.json: supply-heat, still, title */
N_ ("No air, or vents blocked")

/* knowledge/checks-supply.json: supply-heat, still, meaning */
N_ ("Clean the vents, replace the fan.")

/* knowledge/checks-supply.json: supply-swap, title */
N_ ("Try a known good supply")

/* knowledge/checks-supply.json: supply-swap, why */
N_ ("Settles supply against the rest when readings do not.")

/* knowledge/checks-supply.json: supply-swap, safety */
N_ ("This is mains wiring: unplug first, and leave it to a trained person.")

/* knowledge/checks-supply.json: supply-swap, how */
N_ ("Prove the good supply on a dummy load first, every rail.")

/* knowledge/checks-supply.json: supply-swap, how */
N_ ("Unplug. The mains wires are moved by a trained person only.")

/* knowledge/checks-supply.json: supply-swap, how */
N_ ("Set +5 V at the board, then try to bring the fault on.")

/* knowledge/checks-supply.json: supply-swap, how */
N_ ("Expect the fault to stay unless the old supply made it.")

/* knowledge/checks-supply.json: supply-swap, gone, meaning */
N_ ("It was the supply, its setting or its screws.")

/* knowledge/checks-supply.json: supply-swap, stays, meaning */
N_ ("The supply is cleared: wiring, board or mains.")

/* knowledge/checks-trained.json: mains-outlet-volts, title */
N_ ("Mains at the outlet")

/* knowledge/checks-trained.json: mains-outlet-volts, why */
N_ ("A starved outlet looks like a tired supply.")

/* knowledge/checks-trained.json: mains-outlet-volts, safety */
N_ ("This is live mains: only a trained person, where the law says so a licensed one, with CAT II or III leads. Skip it otherwise.")

/* knowledge/checks-trained.json: mains-outlet-volts, how */
N_ ("Trained or licensed person, shrouded probes, cabinet off, then on.")

/* knowledge/checks-trained.json: mains-outlet-volts, how */
N_ ("Read AC volts at the outlet with the cabinet off and again as it starts.")

/* knowledge/checks-trained.json: mains-outlet-volts, how */
N_ ("Expect the local mains within 5 per cent, and less than 3 per cent of sag.")

/* knowledge/checks-trained.json: mains-outlet-volts, right, title */
N_ ("Within 10 per cent, sags little")

/* knowledge/checks-trained.json: mains-outlet-volts, right, meaning */
N_ ("The mains is good.")

/* knowledge/checks-trained.json: mains-outlet-volts, low, title */
N_ ("More than 10 per cent low")

/* knowledge/checks-trained.json: mains-outlet-volts, low, meaning */
N_ ("An electrician looks at outlet and circuit.")

/* knowledge/checks-trained.json: mains-outlet-volts, sags, title */
N_ ("Sags more than 5 per cent at switch-on")

/* knowledge/checks-trained.json: mains-outlet-volts, sags, meaning */
N_ ("Long cord or shared circuit: shorten it, give it its own.")

/* knowledge/checks-trained.json: mains-outlet-volts, high, title */
N_ ("More than 10 per cent high")

/* knowledge/checks-trained.json: mains-outlet-volts, high, meaning */
N_ ("Everything runs hot. Have it looked at.")

/* knowledge/checks-trained.json: mains-path-ohms, title */
N_ ("Mains path by ohms, unplugged")

/* knowledge/checks-trained.json: mains-path-ohms, why */
N_ ("Finds the open part between plug and supply without live mains.")

/* knowledge/checks-trained.json: mains-path-ohms, how */
N_ ("Trained person. Unplug and keep the plug in sight.")

/* knowledge/checks-trained.json: mains-path-ohms, how */
N_ ("Set the cabinet's switch to on, close the doors so that the interlock is pressed; ohms from plug pin to the supply's input, each side.")

/* knowledge/checks-trained.json: mains-path-ohms, how */
N_ ("Fuse, switch, filter and cord in turn.")

/* knowledge/checks-trained.json: mains-path-ohms, how */
N_ ("Expect less than 1 Ω along each side.")

/* knowledge/checks-trained.json: mains-path-ohms, through, title */
N_ ("Continuous on both sides")

/* knowledge/checks-trained.json: mains-path-ohms, through, meaning */
N_ ("The mains reaches the supply.")

/* knowledge/checks-trained.json: mains-path-ohms, open, title */
N_ ("Open somewhere")

/* knowledge/checks-trained.json: mains-path-ohms, open, meaning */
N_ ("Have that part replaced.")

/* knowledge/checks-trained.json: secondary-volts, title */
N_ ("Transformer windings, loaded")

/* knowledge/checks-trained.json: secondary-volts, why */
N_ ("Splits mains and transformer from what follows.")

/* knowledge/checks-trained.json: secondary-volts, safety */
N_ ("Transformer and mains wires are close to this point: covers on, trained hands only, one hand, nothing metal on wrists.")

/* knowledge/checks-trained.json: secondary-volts, how */
N_ ("Trained person. Covers on all mains parts.")

/* knowledge/checks-trained.json: secondary-volts, how */
N_ ("AC volts across each winding at the bridge or the fuse block, game running.")

/* knowledge/checks-trained.json: secondary-volts, how */
N_ ("Expect each within a tenth of its label.")

/* knowledge/checks-trained.json: secondary-volts, right, title */
N_ ("All near the label")

/* knowledge/checks-trained.json: secondary-volts, right, meaning */
N_ ("Transformer and mains are good: look at bridge and capacitor.")

/* knowledge/checks-trained.json: secondary-volts, low, title */
N_ ("All low by the same ratio")

/* knowledge/checks-trained.json: secondary-volts, low, meaning */
N_ ("Low mains or the wrong tap.")

/* knowledge/checks-trained.json: secondary-volts, one, title */
N_ ("One low or missing")

/* knowledge/checks-trained.json: secondary-volts, one, meaning */
N_ ("Its fuse, holder, plug, or a short behind it.")

/* knowledge/checks-trained.json: secondary-volts, high, title */
N_ ("All high by the same ratio")

/* knowledge/checks-trained.json: secondary-volts, high, meaning */
N_ ("Wrong tap, or very little load.")

/* knowledge/checks-trained.json: secondary-volts, none, title */
N_ ("None at all")

/* knowledge/checks-trained.json: secondary-volts, none, meaning */
N_ ("Mains does not arrive.")

/* knowledge/checks-trained.json: bigcap-ripple, title */
N_ ("Ripple on the big capacitor")

/* knowledge/checks-trained.json: bigcap-ripple, why */
N_ ("Tells a tired capacitor from half a bridge.")

/* knowledge/checks-trained.json: bigcap-ripple, how */
N_ ("AC volts across the big capacitor's screws, game running; frequency too if the meter has it.")

/* knowledge/checks-trained.json: bigcap-ripple, how */
N_ ("Expect 0.25 to 0.55 V at 3 to 5 A, at twice the mains frequency.")

/* knowledge/checks-trained.json: bigcap-ripple, usual, meaning */
N_ ("Capacitor and bridge are good.")

/* knowledge/checks-trained.json: bigcap-ripple, double, title */
N_ ("Above 0.70 V, at twice mains frequency")

/* knowledge/checks-trained.json: bigcap-ripple, double, meaning */
N_ ("The capacitor is tired.")

/* knowledge/checks-trained.json: bigcap-ripple, single, title */
N_ ("Above 1.0 V, at mains frequency")

/* knowledge/checks-trained.json: bigcap-ripple, single, meaning */
N_ ("Half the bridge is gone.")

/* knowledge/checks-trained.json: bigcap-ripple, none, title */
N_ ("Next to nothing, no DC either")

/* knowledge/checks-trained.json: bigcap-ripple, none, meaning */
N_ ("Nothing arrives: fuse, bridge, mains.")

/* knowledge/checks-trained.json: bigcap-dc, title */
N_ ("Raw volts on the big capacitor")

/* knowledge/checks-trained.json: bigcap-dc, why */
N_ ("Says whether the regulator gets enough to work with.")

/* knowledge/checks-trained.json: bigcap-dc, how */
N_ ("DC volts across the big capacitor's screws, game running; the lowest point must stay above 7 V.")

/* knowledge/checks-trained.json: bigcap-dc, how */
N_ ("Expect 8 to 11.5 V ahead of a 5 V regulator.")

/* knowledge/checks-trained.json: bigcap-dc, right, title */
N_ ("8 to 11.5 V")

/* knowledge/checks-trained.json: bigcap-dc, right, meaning */
N_ ("The regulator is fed: look at regulator or load.")

/* knowledge/checks-trained.json: bigcap-dc, low, title */
N_ ("Below 8 V")

/* knowledge/checks-trained.json: bigcap-dc, low, meaning */
N_ ("Capacitor, bridge, winding or mains.")

/* knowledge/checks-trained.json: bigcap-dc, high, title */
N_ ("Above 11.5 V")

/* knowledge/checks-trained.json: bigcap-dc, high, meaning */
N_ ("Hardly any load, or the wrong tap: is the regulator open?")

/* knowledge/checks-trained.json: bigcap-dc, none, title */
N_ ("Below 1 V")

/* knowledge/checks-trained.json: bigcap-dc, none, meaning */
N_ ("Fuse, bridge or mains.")

/* knowledge/computed.json: trim-window-board, title */
N_ ("Trim window at the board")

/* knowledge/computed.json: trim-window-board, none-suits, title */
N_ ("No position suits all rails")

/* knowledge/computed.json: trim-window-board, higher-suits, title */
N_ ("A higher position suits all rails")

/* knowledge/computed.json: trim-window-board, lower-suits, title */
N_ ("A lower position suits all rails")

/* knowledge/computed.json: trim-window-board, this-suits, title */
N_ ("The present position suits all rails")

/* knowledge/computed.json: trim-window-terminals, title */
N_ ("Trim window at the terminals")

/* knowledge/computed.json: drop-p5, title */
N_ ("Lost between terminals and board, +5 V")

/* knowledge/computed.json: drop-p5, backwards, title */
N_ ("More at the far end than at the near one")

/* knowledge/computed.json: drop-p5, usual, title */
N_ ("As usual")

/* knowledge/computed.json: drop-p5, raised, title */
N_ ("More than usual")

/* knowledge/computed.json: drop-p5, large, title */
N_ ("Far more than usual")

/* knowledge/computed.json: drop-p5-chip, title */
N_ ("Lost between board edge and chip, +5 V")

/* knowledge/computed.json: drop-p12, title */
N_ ("Lost between terminals and board, +12 V")

/* knowledge/computed.json: drop-m5, title */
N_ ("Lost between terminals and board, −5 V")

/* knowledge/computed.json: fall-p5-terminals, title */
N_ ("+5 V at the terminals, board out less board fitted")

/* knowledge/computed.json: fall-p5-terminals, rises, title */
N_ ("Rises with the board fitted")

/* knowledge/computed.json: fall-p5-terminals, usual, title */
N_ ("Falls as usual with the board fitted")

/* knowledge/computed.json: fall-p5-terminals, raised, title */
N_ ("Falls more than usual")

/* knowledge/computed.json: fall-p5-terminals, large, title */
N_ ("Falls far more than usual")

/* knowledge/computed.json: fall-p5-board, title */
N_ ("+5 V, terminals with the board out less board when fitted")

/* knowledge/computed.json: fall-p12-terminals, title */
N_ ("+12 V at the terminals, board out less board fitted")

/* knowledge/computed.json: fall-m5-board, title */
N_ ("−5 V, terminals with the board out less board when fitted")

/* knowledge/computed.json: fall-p24-board, title */
N_ ("+24 V, terminals with the board out less board when fitted")

/* knowledge/computed.json: trim-line-board, title */
N_ ("Readings of the trim at the board")

/* knowledge/computed.json: trim-line-board, on-line, title */
N_ ("On one line for each rail")

/* knowledge/computed.json: trim-line-board, off-line, title */
N_ ("Not on one line")

/* knowledge/computed.json: trim-line-terminals, title */
N_ ("Readings of the trim at the terminals")

/* knowledge/computed.json: tracking-m5-board, title */
N_ ("−5 V against +5 V, at the board")

/* knowledge/computed.json: tracking-m5-board, still, title */
N_ ("Hardly follows the trim")

/* knowledge/computed.json: tracking-m5-board, lags, title */
N_ ("Follows the trim less than it should")

/* knowledge/computed.json: tracking-m5-board, tracks, title */
N_ ("Follows the trim")

/* knowledge/computed.json: tracking-m5-board, overshoots, title */
N_ ("Follows the trim more than it should")

/* knowledge/computed.json: tracking-m5-terminals, title */
N_ ("−5 V against +5 V, at the terminals")

/* knowledge/symptoms-controls.json: controls-erratic, title */
N_ ("Controls erratic, several at once")

/* knowledge/symptoms-controls.json: controls-erratic, detail */
N_ ("Buttons or sticks fail or fire together.")

/* knowledge/symptoms-controls.json: control-dead, title */
N_ ("One control dead or stuck")

/* knowledge/symptoms-controls.json: control-dead, detail */
N_ ("A single button or direction does nothing, or acts without being touched.")

/* knowledge/symptoms-controls.json: coins-wrong, title */
N_ ("Coins not counted, or credits from nowhere")

/* knowledge/symptoms-controls.json: coins-wrong, detail */
N_ ("A coin drops through without a credit, or credits come by themselves.")

/* knowledge/symptoms-controls.json: scores-lost, title */
N_ ("Scores or settings lost")

/* knowledge/symptoms-controls.json: scores-lost, detail */
N_ ("After a night without power the scores and settings are those of a new machine.")

/* knowledge/symptoms-game.json: resets, title */
N_ ("Resets by itself")

/* knowledge/symptoms-game.json: resets, detail */
N_ ("The game starts over in play or while it shows itself off.")

/* knowledge/symptoms-game.json: boot-loop, title */
N_ ("Never gets past its start")

/* knowledge/symptoms-game.json: boot-loop, detail */
N_ ("It begins, breaks off and begins again, and never reaches the title picture.")

/* knowledge/symptoms-game.json: watchdog-barks, title */
N_ ("Ticks through resets, several a second")

/* knowledge/symptoms-game.json: watchdog-barks, detail */
N_ ("The watchdog catches the processor again and again: a steady tick and the same patterned picture.")

/* knowledge/symptoms-game.json: memory-error, title */
N_ ("Memory error on self-test")

/* knowledge/symptoms-game.json: memory-error, detail */
N_ ("The self-test names a memory chip or stops with a pattern.")

/* knowledge/symptoms-game.json: thump-cures, title */
N_ ("A thump or a re-seat cures it for a while")

/* knowledge/symptoms-game.json: thump-cures, detail */
N_ ("It comes back after a knock or after plugs were moved.")

/* knowledge/symptoms-game.json: bench-fine, title */
N_ ("Fine on the bench, fails in the cabinet")

/* knowledge/symptoms-game.json: bench-fine, detail */
N_ ("The board runs well on another supply and harness.")

/* knowledge/symptoms-picture-sound.json: garbled-graphics, title */
N_ ("Garbled graphics")

/* knowledge/symptoms-picture-sound.json: garbled-graphics, detail */
N_ ("Wrong tiles, stripes or letters over picture or background while the game goes on.")

/* knowledge/symptoms-picture-sound.json: sprites-wrong, title */
N_ ("Moving figures garbled or missing")

/* knowledge/symptoms-picture-sound.json: sprites-wrong, detail */
N_ ("The background stands, but what should move over it is broken, flickers or is not there.")

/* knowledge/symptoms-picture-sound.json: palette-wrong, title */
N_ ("Colours wrong everywhere")

/* knowledge/symptoms-picture-sound.json: palette-wrong, detail */
N_ ("Every colour is a wrong one, or they change from one start to the next.")

/* knowledge/symptoms-picture-sound.json: colour-missing, title */
N_ ("One colour missing or too strong")

/* knowledge/symptoms-picture-sound.json: colour-missing, detail */
N_ ("The whole picture leans to one tint because red, green or blue is gone or stuck.")

/* knowledge/symptoms-picture-sound.json: picture-bars, title */
N_ ("Wavy picture or a rolling dark bar")

/* knowledge/symptoms-picture-sound.json: picture-bars, detail */
N_ ("Edges bend in waves, or a dark bar climbs slowly through the picture.")

/* knowledge/symptoms-picture-sound.json: picture-dim, title */
N_ ("Picture too dark")

/* knowledge/symptoms-picture-sound.json: picture-dim, detail */
N_ ("The picture is there but weak, also with the controls turned up.")

/* knowledge/symptoms-picture-sound.json: picture-rolls, title */
N_ ("Picture rolls or tears")

/* knowledge/symptoms-picture-sound.json: picture-rolls, detail */
N_ ("The picture will not hold still sideways or upwards.")

/* knowledge/symptoms-picture-sound.json: sound-bars, title */
N_ ("Picture shakes with the sound")

/* knowledge/symptoms-picture-sound.json: sound-bars, detail */
N_ ("Bars or a shake follow the loud passages.")

/* knowledge/symptoms-picture-sound.json: audio-hum, title */
N_ ("Hum, whatever the volume")

/* knowledge/symptoms-picture-sound.json: audio-hum, detail */
N_ ("A steady hum that the volume control does not change.")

/* knowledge/symptoms-picture-sound.json: hum-with-volume, title */
N_ ("Hum that grows with the volume")

/* knowledge/symptoms-picture-sound.json: hum-with-volume, detail */
N_ ("The hum is gone at volume zero and comes up with the game's own sound.")

/* knowledge/symptoms-picture-sound.json: picture-buzz, title */
N_ ("Buzz that changes with the picture")

/* knowledge/symptoms-picture-sound.json: picture-buzz, detail */
N_ ("The speaker buzzes more when the screen is bright or busy.")

/* knowledge/symptoms-picture-sound.json: no-sound, title */
N_ ("No sound, game plays")

/* knowledge/symptoms-picture-sound.json: no-sound, detail */
N_ ("Everything plays but the speaker is silent.")

/* knowledge/symptoms-picture-sound.json: distorted-sound, title */
N_ ("Weak or distorted sound")

/* knowledge/symptoms-picture-sound.json: distorted-sound, detail */
N_ ("The sound is thin, cracks or breaks up, often worse when warm.")

/* knowledge/symptoms-picture-sound.json: amp-hot, title */
N_ ("Sound chip very hot, pops")

/* knowledge/symptoms-picture-sound.json: amp-hot, detail */
N_ ("The amplifier burns the finger, the speaker pops or holds its cone out.")

/* knowledge/symptoms-power.json: dead, title */
N_ ("Totally dead")

/* knowledge/symptoms-power.json: dead, detail */
N_ ("No lamp, no fan, no glow.")

/* knowledge/symptoms-power.json: board-dead, title */
N_ ("Lamps and monitor on, board dead")

/* knowledge/symptoms-power.json: board-dead, detail */
N_ ("The cabinet lives but there is no game: no sound, no picture from the board.")

/* knowledge/symptoms-power.json: supply-ticks, title */
N_ ("Supply ticks or whines")

/* knowledge/symptoms-power.json: supply-ticks, detail */
N_ ("It tries to start once or twice a second, or sings audibly.")

/* knowledge/symptoms-power.json: cold-start, title */
N_ ("Will not start cold")

/* knowledge/symptoms-power.json: cold-start, detail */
N_ ("Dead or garbled when cold; comes up after some minutes or at the second switch-on.")

/* knowledge/symptoms-power.json: warm-freeze, title */
N_ ("Runs cold, fails when warm")

/* knowledge/symptoms-power.json: warm-freeze, detail */
N_ ("It plays well for a while, then freezes, resets or loses its picture; after a rest it plays again.")

/* knowledge/symptoms-power.json: lamps-dim, title */
N_ ("Lamps dim, or dim with loud sound")

/* knowledge/symptoms-power.json: lamps-dim, detail */
N_ ("Coin door or panel lamps glow weakly or sag when the sound is loud.")

/* knowledge/symptoms-power.json: fuse-blows, title */
N_ ("Fuse blows at once")

/* knowledge/symptoms-power.json: fuse-blows, detail */
N_ ("A new low-voltage fuse goes as soon as power comes on.")

/* knowledge/symptoms-power.json: mains-fuse-blows, title */
N_ ("Mains fuse blows at once")

/* knowledge/symptoms-power.json: mains-fuse-blows, detail */
N_ ("The fuse beside the mains cord goes as soon as the cabinet is switched on: leave it unplugged.")

/* knowledge/symptoms-power.json: fuse-later, title */
N_ ("Fuse blows after minutes or weeks")

/* knowledge/symptoms-power.json: fuse-later, detail */
N_ ("The fuse lasts a while, then goes again.")

/* knowledge/symptoms-power.json: burning-smell, title */
N_ ("Burning smell or a brown, hot plug")

/* knowledge/symptoms-power.json: burning-smell, detail */
N_ ("It smells of hot plastic, or a plug has turned brown.")

/* knowledge/symptoms-power.json: evening-fails, title */
N_ ("Fails in the evening or when others run")

/* knowledge/symptoms-power.json: evening-fails, detail */
N_ ("It fails only when several machines are on, or at certain hours.")

/* knowledge/symptoms-power.json: chips-hot, title */
N_ ("Chips run hot, one after another fails")

/* knowledge/symptoms-power.json: chips-hot, detail */
N_ ("The game works but chips or picture parts are unusually warm and die early.")

/* knowledge/symptoms-power.json: tingle, title */
N_ ("Shock or tingle from the metal")

/* knowledge/symptoms-power.json: tingle, detail */
N_ ("The coin door or panel tingles: pull the plug, this is a mains fault.")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("What the screw does")

/* lessons/what-the-screw-does.json: what-the-screw-does, about */
N_ ("One screw moves several rails at once. The class turns it at the practice cabinet, calls where the other rails will land, and finds the place that suits all of them.")

/* lessons/what-the-screw-does.json: what-the-screw-does, caution */
N_ ("The practice cabinet hurts nobody. At a real one the mains screws stand a finger’s width from the low-voltage ones: covers on, clips instead of hand-held probes, an insulated driver, one hand away, and nobody works alone. Mains and the inside of supply and monitor belong to trained or licensed people; local codes decide.")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("The complaint")

/* lessons/what-the-screw-does.json: what-the-screw-does, say */
N_ ("The cabinet resets in play. Somebody has had the supply on the bench and set it with the board out. Nothing is broken; it is set wrong.")

/* lessons/what-the-screw-does.json: what-the-screw-does, class */
N_ ("A cabinet that resets.\nA supply with three rails, and one screw.")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("Where +5 V stands")

/* lessons/what-the-screw-does.json: what-the-screw-does, say */
N_ ("Choose +5 V and the place board, and keep the settled value. It is below its limit: every logic chip on the board lives on this rail, and below 4.8 V they begin to err.")

/* lessons/what-the-screw-does.json: what-the-screw-does, ask */
N_ ("Which rail would you read first, and where: at the supply or at the board?")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("The other two")

/* lessons/what-the-screw-does.json: what-the-screw-does, say */
N_ ("Read +12 V and −5 V at the board as well. From one set of readings the program already has a guess how they will move, a wide one.")

/* lessons/what-the-screw-does.json: what-the-screw-does, ask */
N_ ("Is only +5 V low, or all three, and what does that tell you?")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("A first turn")

/* lessons/what-the-screw-does.json: what-the-screw-does, say */
N_ ("Turn the trim up until +5 V has risen by about a tenth of a volt: the key for it is the closing bracket. Let nobody read +12 V yet.")

/* lessons/what-the-screw-does.json: what-the-screw-does, ask */
N_ ("I turn until +5 V has gone up by 0.1 V. Which rails move with it?")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("+5 V again")

/* lessons/what-the-screw-does.json: what-the-screw-does, say */
N_ ("Read +5 V at the board. All older readings have gone stale: they belong to the place where the screw stood before.")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("Call +12 V")

/* lessons/what-the-screw-does.json: what-the-screw-does, say */
N_ ("Take calls, with a plus or minus from those who dare. The windings share their volts a turn, so +12 V should move by 12 parts when +5 V moves by 5: about 0.24 V for 0.1 V. Then reveal and read it.")

/* lessons/what-the-screw-does.json: what-the-screw-does, ask */
N_ ("+5 V went up by 0.1 V. Where is +12 V now?")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("A line for each rail")

/* lessons/what-the-screw-does.json: what-the-screw-does, say */
N_ ("The map draws +5 V across and the others up, by how far each stands between its limits. Two places of the screw make a line. It is the ratio of the windings that gives its slope; the load only shifts it.")

/* lessons/what-the-screw-does.json: what-the-screw-does, ask */
N_ ("What would a rail look like that has a regulator of its own?")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("Call −5 V")

/* lessons/what-the-screw-does.json: what-the-screw-does, say */
N_ ("Nobody has read −5 V since the turn. On some supplies it follows the screw, on others it has its own regulator and stays. Take calls, or a show of hands; then reveal and read it.")

/* lessons/what-the-screw-does.json: what-the-screw-does, ask */
N_ ("And −5 V: nearer to nought, the same, or further from it?")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("The best place")

/* lessons/what-the-screw-does.json: what-the-screw-does, say */
N_ ("The upright line on the map is where the smallest margin of all rails is largest. Turn until +5 V stands there, in small steps.")

/* lessons/what-the-screw-does.json: what-the-screw-does, ask */
N_ ("Where would you leave the screw: +5 V exactly in its middle, or where the worst-off rail is best off?")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("Every rail again")

/* lessons/what-the-screw-does.json: what-the-screw-does, say */
N_ ("After the last turn every rail is read again at the board, under load, and the supply’s own terminals stay at 5.30 V or below. If they have to pass that to serve the board, it is the wiring that wants mending.")

/* lessons/what-the-screw-does.json: what-the-screw-does, ask */
N_ ("Which readings may we still believe?")

/* lessons/what-the-screw-does.json: what-the-screw-does, title */
N_ ("What to take home")

/* lessons/what-the-screw-does.json: what-the-screw-does, say */
N_ ("The screw is set at the board, loaded, in small turns, and all rails are read after it. It is no cure for a lost volt on the way, nor for one weak rail.")

/* lessons/what-the-screw-does.json: what-the-screw-does, class */
N_ ("One screw, all rails.\nSet at the board, under load.\nRead every rail after every turn.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, title */
N_ ("When −5 cannot be met")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, about */
N_ ("A weak −5 V, and one screw. The class sees how far the screw can help, why two rails rule each other out, and what is mended instead. Held over a saved session at the cabinet Kelp Gardens.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, caution */
N_ ("These are somebody’s saved readings; nobody touches anything. At a real cabinet the supply’s terminals stand beside bare mains screws: covers on, one hand away, never alone. The inside of a supply holds some 300 V for minutes after the plug is out and is left to trained people.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, title */
N_ ("Garbled tiles")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, say */
N_ ("This board has old memory chips that need three rails. Without their −5 V they forget, run hot and can be destroyed, so a weak −5 V is no matter of taste.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, class */
N_ ("Garbled tiles that come and go.\nThe memory on this board needs +5 V, +12 V and −5 V.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, ask */
N_ ("Which rails does the memory of this board need?")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, title */
N_ ("Too weak")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, say */
N_ ("+5 V and +12 V are in order, −5 V is nearer to nought than −4.5 V. On a minus rail weak means nearer to nought: its strong limit is the more negative one.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, ask */
N_ ("Is −4.1 V higher or lower than −5 V, and is it weaker or stronger?")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, title */
N_ ("Call the terminals")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, say */
N_ ("First the question of the last lesson: is it the supply or the way? Take calls for −5 V at the supply’s own screws. The current in this rail is small, so a wire can hardly eat much of it.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, caution */
N_ ("This reading is taken beside the mains: covers on, leads clipped before the power came on.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, ask */
N_ ("What will −5 V read at the supply’s screws?")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, title */
N_ ("Could the screw lift it?")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, say */
N_ ("The screw follows +5 V. If −5 V follows too, a little more of everything might do. Before the turn: how much room has +5 V to its upper limit?")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, ask */
N_ ("+5 V may go to its upper limit. Will that be enough for −5 V?")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, title */
N_ ("Call −5 V after the turn")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, say */
N_ ("+5 V goes up by eight hundredths of a volt. Take calls for −5 V at the board; the reveal goes on to the reading after the turn.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, ask */
N_ ("+5 V goes up by 0.08 V. Where does −5 V go?")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, title */
N_ ("Two rails rule each other out")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, say */
N_ ("+5 V stands near its upper limit and −5 V is still short. On the map no place across suits both lines: what −5 V wants begins where +5 V must have ended. Above 5.25 V chips run hot and their timing grows thin, so it goes back down.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, ask */
N_ ("Is there a place of the screw that suits all rails?")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, title */
N_ ("With the board out")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, say */
N_ ("The board is out and −5 V is just as weak with nothing on it, while the other rails are right. So it is not the board that pulls it down: it is the part of the supply that makes it.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, caution */
N_ ("The board is pulled and fitted only with the power off and the rails gone. The regulator inside the supply was replaced by somebody trained for it.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, ask */
N_ ("Weak with nothing connected: who is to blame?")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, title */
N_ ("Call the repair")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, say */
N_ ("A trained person has put a new regulator in, and the supply was proved on its own. Take calls for −5 V at the board with everything fitted.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, ask */
N_ ("The regulator is new. What will −5 V read at the board?")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, title */
N_ ("When to stop turning")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, say */
N_ ("The screw sets what is healthy; it cannot replace what is not. Whoever chases −5 V with it ends with +5 V far too high and −5 V hardly changed.")

/* lessons/when-minus-five-cannot-be-met.json: when-minus-five-cannot-be-met, class */
N_ ("One screw cannot give what one rail has lost.\nWhen two rails rule each other out, mend the weak one.")

/* lessons/wiring-or-supply.json: wiring-or-supply, title */
N_ ("Wiring or supply?")

/* lessons/wiring-or-supply.json: wiring-or-supply, about */
N_ ("The board gets too little. Is the supply low, or is the rest lost on the way? Two readings tell, and two drops say where. Held over a saved session at the cabinet Lantern Drift.")

/* lessons/wiring-or-supply.json: wiring-or-supply, caution */
N_ ("These are somebody’s saved readings; nobody touches anything. At a real cabinet the supply’s terminals stand beside bare mains screws: covers on before any probe goes there, one hand away, never alone. Plugs are pulled only with the power off.")

/* lessons/wiring-or-supply.json: wiring-or-supply, title */
N_ ("It resets when the lamps flash")

/* lessons/wiring-or-supply.json: wiring-or-supply, say */
N_ ("Read the complaint out. The last entry in this cabinet’s book says that somebody turned the supply up a little. Ask for guesses and write them on the board before anything is shown.")

/* lessons/wiring-or-supply.json: wiring-or-supply, class */
N_ ("It resets when the lamps flash.\nLast time somebody turned the supply up a little.")

/* lessons/wiring-or-supply.json: wiring-or-supply, ask */
N_ ("Supply, wiring or board: what would you bet on?")

/* lessons/wiring-or-supply.json: wiring-or-supply, title */
N_ ("Too low at the board")

/* lessons/wiring-or-supply.json: wiring-or-supply, say */
N_ ("+5 V at the edge connector, board running. Below 4.80 V is out of order. The screw is tempting, and it may be wrong: this reading alone cannot tell a low supply from a loss on the way.")

/* lessons/wiring-or-supply.json: wiring-or-supply, ask */
N_ ("Turn the screw up? What do we not know yet?")

/* lessons/wiring-or-supply.json: wiring-or-supply, say */
N_ ("The same rail, measured at the supply’s screws. If the supply is low, both places read alike but for a tenth of a volt. If the way eats it, the screws read right. Take calls; the reveal goes on to that reading.")

/* lessons/wiring-or-supply.json: wiring-or-supply, caution */
N_ ("This is the reading beside the mains: the covers were on, and the leads were clipped before the power came on.")

/* lessons/wiring-or-supply.json: wiring-or-supply, ask */
N_ ("What will +5 V read at the supply’s own screws?")

/* lessons/wiring-or-supply.json: wiring-or-supply, title */
N_ ("Call the drop of one path")

/* lessons/wiring-or-supply.json: wiring-or-supply, say */
N_ ("The supply is right, so it is the way. Current goes out on +5 V and comes back on ground; both paths lose. The difference of two large readings is poor evidence: the drop is measured directly, along the wire. Good is below 0.1 V for +5 V and below 0.05 V for ground.")

/* lessons/wiring-or-supply.json: wiring-or-supply, ask */
N_ ("Some four tenths of a volt are missing in all. How much of that is lost on the +5 V path?")

/* lessons/wiring-or-supply.json: wiring-or-supply, title */
N_ ("Both paths lose")

/* lessons/wiring-or-supply.json: wiring-or-supply, say */
N_ ("Two separate wires do not go bad together. What do both paths share? One plug and one edge connector. A contact of 50 milliohms takes a quarter of a volt at five amperes and heats as it does.")

/* lessons/wiring-or-supply.json: wiring-or-supply, ask */
N_ ("What do the +5 V path and the ground path have in common?")

/* lessons/wiring-or-supply.json: wiring-or-supply, title */
N_ ("Joint by joint")

/* lessons/wiring-or-supply.json: wiring-or-supply, say */
N_ ("Read along the path, the step shows where it is: good wire shows a steady little, a bad joint shows a jump. Here it is between wire and finger.")

/* lessons/wiring-or-supply.json: wiring-or-supply, ask */
N_ ("What do you do with the power before you pull the plug?")

/* lessons/wiring-or-supply.json: wiring-or-supply, say */
N_ ("Power off, board out, fingers and springs cleaned, plug looked over twice and back in. The screw was not touched. Take calls for +5 V at the board now.")

/* lessons/wiring-or-supply.json: wiring-or-supply, ask */
N_ ("The connector is clean. What will +5 V read at the board?")

/* lessons/wiring-or-supply.json: wiring-or-supply, title */
N_ ("And had we turned it up?")

/* lessons/wiring-or-supply.json: wiring-or-supply, say */
N_ ("The screw would have hidden the fault. On the day the contact makes again, the board gets all of it: the terminals would stand near 5.4 V, and the other rails too high with them.")

/* lessons/wiring-or-supply.json: wiring-or-supply, class */
N_ ("Low at both places: the supply.\nRight at the supply, low at the board: the way.\nMend the way before you touch the screw.")

/* profiles/classic-5-12-m5.json: classic-5-12-m5, title */
N_ ("+5 / +12 / −5 switcher, one trim")

/* profiles/classic-5-12-m5.json: classic-5-12-m5, p5, feeds */
N_ ("logic")

/* profiles/classic-5-12-m5.json: classic-5-12-m5, p12, feeds */
N_ ("sound amplifier, sometimes memory")

/* profiles/classic-5-12-m5.json: classic-5-12-m5, m5, feeds */
N_ ("op-amps, sometimes memory")

/* profiles/dram-5-12-m5.json: dram-5-12-m5, title */
N_ ("+5 / +12 / −5 for three-rail memory")

/* profiles/dram-5-12-m5.json: dram-5-12-m5, p5, feeds */
N_ ("logic and memory")

/* profiles/dram-5-12-m5.json: dram-5-12-m5, p12, feeds */
N_ ("memory, sound amplifier")

/* profiles/dram-5-12-m5.json: dram-5-12-m5, m5, feeds */
N_ ("memory bias: losing it destroys chips")

/* profiles/linear-5-audio.json: linear-5-audio, title */
N_ ("Linear +5 with raw audio rail")

/* profiles/linear-5-audio.json: linear-5-audio, raw12, label */
N_ ("+12 V raw")

/* profiles/linear-5-audio.json: linear-5-audio, raw12, feeds */
N_ ("sound amplifier, unregulated")

/* profiles/switcher-5-12-24.json: switcher-5-12-24, title */
N_ ("+5 / +12 / +24 switcher")

/* profiles/switcher-5-12-24.json: switcher-5-12-24, p12, feeds */
N_ ("fans, coin parts, small amplifiers")

/* profiles/switcher-5-12-24.json: switcher-5-12-24, p24, feeds */
N_ ("sound amplifier, lockouts, counters")

/* profiles/switcher-5-12-m12.json: switcher-5-12-m12, title */
N_ ("+5 / +12 / −12 switcher")

/* profiles/switcher-5-12-m12.json: switcher-5-12-m12, p12, feeds */
N_ ("sound amplifier, op-amps")

/* profiles/switcher-5-12-m12.json: switcher-5-12-m12, m12, feeds */
N_ ("op-amps, a small −5 V regulator on the board")

/* profiles/switcher-5-12.json: switcher-5-12, title */
N_ ("+5 / +12 switcher")

/* profiles/switcher-5-12.json: switcher-5-12, p12, feeds */
N_ ("sound amplifier, fans, coin parts")

/* stages/stages.json: look, title */
N_ ("Look and isolate")

/* stages/stages.json: look, purpose */
N_ ("Finds what eyes and nose can find, and makes the cabinet dead before a hand goes in.")

/* stages/stages.json: look, caution */
N_ ("Mains kills, big capacitors stay charged, and the picture tube holds 20 kV and more for days. Pull the plug; a switch is not enough. Keep well away from the tube and the monitor chassis, do not work alone, and leave the mains side and the inside of supply and monitor to trained or licensed people. Local codes and licensed practice decide. No meter reading taken with this program proves that a circuit is dead.")

/* stages/stages.json: look, needs */
N_ ("The plug in sight, out of its outlet, where nobody puts it back.")

/* stages/stages.json: look, needs */
N_ ("Good light, a dry floor, rings and watch off.")

/* stages/stages.json: look, needs */
N_ ("Somebody within call.")

/* stages/stages.json: look, steps */
N_ ("Pull the plug and wait five minutes.")

/* stages/stages.json: look, steps */
N_ ("Write down the complaint and photograph every plug and the trim as they are.")

/* stages/stages.json: look, steps */
N_ ("Look and smell: brown plugs, bulged or leaking capacitors, loose screws, wrong fuses.")

/* stages/stages.json: look, steps */
N_ ("See that the earth wire of the cord reaches the supply case and all metal that can be touched.")

/* stages/stages.json: look, steps */
N_ ("Put a cover over the mains screws beside the low-voltage ones.")

/* stages/stages.json: look, steps */
N_ ("Mend what is plainly loose or burnt on the low-voltage side before any power is applied.")

/* stages/stages.json: look, stage-plug-out, text */
N_ ("Is the plug out of its outlet?")

/* stages/stages.json: look, stage-plug-out, no */
N_ ("The cabinet is not isolated: pull the plug before anything is touched.")

/* stages/stages.json: look, stage-earth-good, text */
N_ ("Does the earth wire reach all metal that can be touched?")

/* stages/stages.json: look, stage-earth-good, no */
N_ ("Without earth a fault puts mains on the metal. Leave the power off until a competent person has made the earth good.")

/* stages/stages.json: look, stage-mains-covered, text */
N_ ("Are the mains screws covered?")

/* stages/stages.json: look, stage-mains-covered, no */
N_ ("A slipping probe bridges mains and low voltage. Cover the mains screws, or have it done, before any power is applied.")

/* stages/stages.json: look, stage-looks-sound, text */
N_ ("Is it free of burnt plugs, bulged capacitors and wrong fuses?")

/* stages/stages.json: look, stage-looks-sound, no */
N_ ("What is burnt or bulged will not heal under power: mend it first, a trained person where it lies in the supply.")

/* stages/stages.json: look, ends */
N_ ("The plug is out, the earth is whole, the mains screws are covered, and nothing burnt or loose is left.")

/* stages/stages.json: look, stops */
N_ ("Earth missing, mains insulation damaged, or a smell of burning: hand it to a trained or licensed person.")

/* stages/stages.json: look, unproven */
N_ ("Nobody looked: a missing earth, bare mains screws or a burnt plug would not have been noticed.")

/* stages/stages.json: bare-supply, title */
N_ ("Supply without the board")

/* stages/stages.json: bare-supply, purpose */
N_ ("Proves every rail before a board that cannot be bought again is put on it.")

/* stages/stages.json: bare-supply, caution */
N_ ("From here on mains is live, often a few centimetres from the screws you measure. Covers on first, shrouded probes, one hand, black lead clipped before power. If a reading is above 60 V you are on the wrong screw: stop, hands off, plug out.")

/* stages/stages.json: bare-supply, needs */
N_ ("The board unplugged from its connector, power off.")

/* stages/stages.json: bare-supply, needs */
N_ ("A dummy load where the supply is a switcher: 5 Ω at 10 W or more on +5 V, 47 Ω at 5 W on +12 V. They get hot.")

/* stages/stages.json: bare-supply, needs */
N_ ("The meter on DC volts, with a range above the highest rail.")

/* stages/stages.json: bare-supply, steps */
N_ ("With the plug out, unplug the board and fit the dummy load.")

/* stages/stages.json: bare-supply, steps */
N_ ("Clip the black lead to the supply's 0 V screw.")

/* stages/stages.json: bare-supply, steps */
N_ ("Stand clear, put the plug in and switch on.")

/* stages/stages.json: bare-supply, steps */
N_ ("Read every rail at the supply's screws: sign first, then value.")

/* stages/stages.json: bare-supply, steps */
N_ ("Read the ripple of the reference rail on AC volts.")

/* stages/stages.json: bare-supply, steps */
N_ ("Power off and wait until the rails have fallen below 0.5 V.")

/* stages/stages.json: bare-supply, stage-dummy-load, text */
N_ ("Does a dummy load hang on the supply?")

/* stages/stages.json: bare-supply, stage-dummy-load, no */
N_ ("A switcher without a load may tick, or stand too low or too high, and be sound. Load it before it is called bad or good.")

/* stages/stages.json: bare-supply, ends */
N_ ("Every rail was read with the right sign and inside its limits for a supply without a board.")

/* stages/stages.json: bare-supply, stops */
N_ ("A rail above what a board stands, of the wrong sign, or missing: the board stays out until the supply is mended.")

/* stages/stages.json: bare-supply, stops */
N_ ("Smoke, a smell, or a ticking that a dummy load does not end: power off.")

/* stages/stages.json: bare-supply, unproven */
N_ ("Not every rail was measured without the board: one too high, missing or of the wrong sign would meet the board first.")

/* stages/stages.json: fit-board, title */
N_ ("Fit the board")

/* stages/stages.json: fit-board, purpose */
N_ ("Puts the board on a supply that is proven, with nothing live.")

/* stages/stages.json: fit-board, caution */
N_ ("Never plug or unplug a board while it is powered. Power off, plug out, and wait for the rails to fall: a connector that goes on askew or live destroys memory and sound chips at once.")

/* stages/stages.json: fit-board, needs */
N_ ("The power off, and the rails below 0.5 V.")

/* stages/stages.json: fit-board, needs */
N_ ("Light enough to see the key and the rows of the connector.")

/* stages/stages.json: fit-board, needs */
N_ ("Clean fingers on the edge: a black finger gets worse under load.")

/* stages/stages.json: fit-board, steps */
N_ ("Pull the plug and wait until the rails have fallen below 0.5 V.")

/* stages/stages.json: fit-board, steps */
N_ ("Look at both sides of the edge and at the springs of the connector.")

/* stages/stages.json: fit-board, steps */
N_ ("Fit the connector: check key and row, look again from the other side.")

/* stages/stages.json: fit-board, steps */
N_ ("Clip the black lead to the board's ground and the red one to +5 V at the edge.")

/* stages/stages.json: fit-board, stage-rails-fallen, text */
N_ ("Have the rails fallen below 0.5 V?")

/* stages/stages.json: fit-board, stage-rails-fallen, no */
N_ ("Wait: a charged rail is a live plug.")

/* stages/stages.json: fit-board, stage-key-checked, text */
N_ ("Do key and row of the connector agree, looked at twice?")

/* stages/stages.json: fit-board, stage-key-checked, no */
N_ ("A connector one row off puts a rail on the wrong finger. Look again before any power.")

/* stages/stages.json: fit-board, stage-own-board, text */
N_ ("Is this the cabinet's own board, not one lent for a trial?")

/* stages/stages.json: fit-board, stage-own-board, no */
N_ ("A board that is known to be good is the last thing to try on a supply that is not proven.")

/* stages/stages.json: fit-board, ends */
N_ ("The board sits right, and the leads are clipped to it.")

/* stages/stages.json: fit-board, stops */
N_ ("A rail that was not proven without the board.")

/* stages/stages.json: fit-board, stops */
N_ ("A finger burnt away, or a spring bent back: mend it first.")

/* stages/stages.json: fit-board, unproven */
N_ ("Nobody checked how the board went in: a connector askew, or fitted live, is not ruled out.")

/* stages/stages.json: first-power, title */
N_ ("First power")

/* stages/stages.json: first-power, purpose */
N_ ("Finds out within seconds whether the board may stay on.")

/* stages/stages.json: first-power, caution */
N_ ("One hand on the switch, the other away from the cabinet; the leads are clipped, not held. Nobody near the monitor. Switch off at once if the reference leaves 80 to 110 per cent of its nominal volts, or if anything smells.")

/* stages/stages.json: first-power, needs */
N_ ("The leads clipped to the reference rail at the board's edge.")

/* stages/stages.json: first-power, needs */
N_ ("The meter showing before the power is on.")

/* stages/stages.json: first-power, needs */
N_ ("A finger on the switch.")

/* stages/stages.json: first-power, steps */
N_ ("Watch the meter, not the picture, and switch on.")

/* stages/stages.json: first-power, steps */
N_ ("Read the reference at the board within five seconds.")

/* stages/stages.json: first-power, steps */
N_ ("Off again at once if it is below 80 or above 110 per cent of its nominal volts.")

/* stages/stages.json: first-power, steps */
N_ ("Read the other rails at the board, the one that memory needs first.")

/* stages/stages.json: first-power, ends */
N_ ("The reference stood between 80 and 110 per cent of its nominal volts at the board.")

/* stages/stages.json: first-power, stops */
N_ ("The reference outside that span, overload on the meter, smoke or a smell: off, and back to the supply without the board.")

/* stages/stages.json: first-power, unproven */
N_ ("Nobody watched the first seconds under power.")

/* stages/stages.json: under-load, title */
N_ ("Under load")

/* stages/stages.json: under-load, purpose */
N_ ("Tells supply, wiring and board apart: what leaves, what arrives, and what is lost on the way.")

/* stages/stages.json: under-load, caution */
N_ ("Mains is live beside the supply's screws: covers on, shrouded probes, one hand, clips where you can. No hand within 15 cm of the tube's neck, its red lead or the monitor chassis.")

/* stages/stages.json: under-load, needs */
N_ ("The board fitted and running.")

/* stages/stages.json: under-load, needs */
N_ ("A meter with a millivolt range for the drops, and AC volts for ripple.")

/* stages/stages.json: under-load, steps */
N_ ("Read every rail at the supply's screws.")

/* stages/stages.json: under-load, steps */
N_ ("Read every rail at the board's edge.")

/* stages/stages.json: under-load, steps */
N_ ("Read the drop along the reference wire: red at the screw, black at the board's finger.")

/* stages/stages.json: under-load, steps */
N_ ("Read the drop along ground: red at the board's ground, black at the supply's 0 V.")

/* stages/stages.json: under-load, steps */
N_ ("Read the ripple of every rail at the board on AC volts.")

/* stages/stages.json: under-load, steps */
N_ ("Mend what loses too much before the trim is touched.")

/* stages/stages.json: under-load, ends */
N_ ("Terminals, board, both drops and ripple were read with the board fitted.")

/* stages/stages.json: under-load, stops */
N_ ("A rail above what a board stands: off.")

/* stages/stages.json: under-load, stops */
N_ ("A plug too hot to hold: off, and mend it.")

/* stages/stages.json: under-load, unproven */
N_ ("Nobody read terminals, board and drops together: supply and wiring cannot be told apart.")

/* stages/stages.json: trim, title */
N_ ("Set the trim")

/* stages/stages.json: trim, purpose */
N_ ("Puts every rail the board needs inside its limits, under the load that is really there.")

/* stages/stages.json: trim, caution */
N_ ("The trim sits beside live mains parts. Insulated driver, one hand, clips instead of hands on the probes; small turns, wait, read. A trim inside the supply's cover is for a trained person.")

/* stages/stages.json: trim, needs */
N_ ("Both drops small: wiring is mended before the supply is turned up.")

/* stages/stages.json: trim, needs */
N_ ("The old position of the trim marked or photographed.")

/* stages/stages.json: trim, needs */
N_ ("The reference clipped at the board's edge.")

/* stages/stages.json: trim, steps */
N_ ("Mark how the trim stands now.")

/* stages/stages.json: trim, steps */
N_ ("Turn a little, wait for the reading to settle, and keep it.")

/* stages/stages.json: trim, steps */
N_ ("Stop at the set point shown, or where the reference stands right at the board.")

/* stages/stages.json: trim, steps */
N_ ("See that the terminals stay below 106 per cent of nominal.")

/* stages/stages.json: trim, ends */
N_ ("The reference stands at its set point at the board, or needed no turn.")

/* stages/stages.json: trim, stops */
N_ ("Terminals high while the board is right: that is wiring, not trim.")

/* stages/stages.json: trim, stops */
N_ ("A trim that jumps or does nothing: turn it back and leave it.")

/* stages/stages.json: trim, unproven */
N_ ("Nobody set the reference under load: it stands where the last hand left it.")

/* stages/stages.json: recheck, title */
N_ ("Read every rail again")

/* stages/stages.json: recheck, purpose */
N_ ("One screw moves several rails: sees that setting one did not push another over.")

/* stages/stages.json: recheck, caution */
N_ ("Mains is still live beside the supply's screws: covers on, shrouded probes, one hand.")

/* stages/stages.json: recheck, needs */
N_ ("The board fitted and running, the trim left alone.")

/* stages/stages.json: recheck, steps */
N_ ("Read every rail at the board's edge again.")

/* stages/stages.json: recheck, steps */
N_ ("Read the reference at the supply's screws again.")

/* stages/stages.json: recheck, ends */
N_ ("Every rail was read at the board since the last turn, and is inside its limits.")

/* stages/stages.json: recheck, stops */
N_ ("A rail beyond its limits: back to the trim; above what a board stands: off.")

/* stages/stages.json: recheck, unproven */
N_ ("Not every rail was read again after the last turn of the trim: one of them may have moved out.")

/* stages/stages.json: warm-up, title */
N_ ("Warm-up")

/* stages/stages.json: warm-up, purpose */
N_ ("Shows what heat does: a joint or a capacitor that fails warm passes every cold test.")

/* stages/stages.json: warm-up, caution */
N_ ("The cabinet runs for an hour: leave no one alone with it open, and touch only insulated parts when you feel for heat. Heat sinks in a supply may be mains-live.")

/* stages/stages.json: warm-up, needs */
N_ ("An hour with the cabinet running as it is used.")

/* stages/stages.json: warm-up, needs */
N_ ("Leads clipped, so that every reading is taken at the same spot.")

/* stages/stages.json: warm-up, steps */
N_ ("Read the reference at the board as the power comes on.")

/* stages/stages.json: warm-up, steps */
N_ ("Read it again after 5, 15, 30 and 60 minutes, without moving the leads.")

/* stages/stages.json: warm-up, steps */
N_ ("After 20 minutes feel the connector from outside: warm is well, too hot to hold is not.")

/* stages/stages.json: warm-up, stage-connector-cool, text */
N_ ("After 20 minutes, can the connector be held?")

/* stages/stages.json: warm-up, stage-connector-cool, no */
N_ ("A plug too hot to hold has a poor contact and will burn. Power off and mend it.")

/* stages/stages.json: warm-up, ends */
N_ ("Five readings over an hour, and a plug that can be held.")

/* stages/stages.json: warm-up, stops */
N_ ("A reference that wanders off, a hot plug, a stopped fan, a smell: off.")

/* stages/stages.json: warm-up, unproven */
N_ ("Nobody watched it warm up: a fault that comes with heat is not ruled out.")

/* stages/stages.json: exercise, title */
N_ ("Volume, lamps, cold starts")

/* stages/stages.json: exercise, purpose */
N_ ("Asks everything of the supply that a day of play asks.")

/* stages/stages.json: exercise, caution */
N_ ("Stay clear of tube and monitor while the cabinet is played open. Between cold starts wait until the supply is really off: plug out, one minute.")

/* stages/stages.json: exercise, needs */
N_ ("The cabinet playable, coin door wired, volume control within reach.")

/* stages/stages.json: exercise, steps */
N_ ("Volume up in a loud passage, then down: watch the reference at the board.")

/* stages/stages.json: exercise, steps */
N_ ("Coin lamps and start lamps on together.")

/* stages/stages.json: exercise, steps */
N_ ("Run the cabinet's own test.")

/* stages/stages.json: exercise, steps */
N_ ("Three cold starts, one minute with the plug out before each.")

/* stages/stages.json: exercise, stage-volume, text */
N_ ("Did it run through with the volume up and down?")

/* stages/stages.json: exercise, stage-volume, no */
N_ ("Sound pulls a rail down: look at the sound rail and its ground before the job is closed.")

/* stages/stages.json: exercise, stage-lamps, text */
N_ ("Did it run through with all lamps on?")

/* stages/stages.json: exercise, stage-lamps, no */
N_ ("A lamp circuit pulls a rail down: look there before the job is closed.")

/* stages/stages.json: exercise, stage-cold-starts, text */
N_ ("Did it come up at each of three cold starts?")

/* stages/stages.json: exercise, stage-cold-starts, no */
N_ ("It does not come up every time: the fault is still there.")

/* stages/stages.json: exercise, ends */
N_ ("It ran through volume, lamps, its own test and three cold starts.")

/* stages/stages.json: exercise, stops */
N_ ("A reset or a dip under any of them: the fault is still there.")

/* stages/stages.json: exercise, unproven */
N_ ("Nobody tried volume, lamps and cold starts: a supply that sags under them is not ruled out.")

/* stages/stages.json: close, title */
N_ ("Close the job")

/* stages/stages.json: close, purpose */
N_ ("Leaves behind what the next person needs to know.")

/* stages/stages.json: close, caution */
N_ ("Power off and plug out before covers and labels go on. Put every cover and every earth wire back where the photographs show them.")

/* stages/stages.json: close, needs */
N_ ("A label for the supply, and a minute.")

/* stages/stages.json: close, steps */
N_ ("Power off, plug out, covers and earth wires back on.")

/* stages/stages.json: close, steps */
N_ ("Write the label: date, set point at board and terminals, warm or cold, meter, who.")

/* stages/stages.json: close, steps */
N_ ("Put the label on the supply and keep the record of the job.")

/* stages/stages.json: close, steps */
N_ ("Say what was left unproven to whoever gets the cabinet back.")

/* stages/stages.json: close, stage-covers-on, text */
N_ ("Are all covers and earth wires back on?")

/* stages/stages.json: close, stage-covers-on, no */
N_ ("The cabinet is not safe to hand over: put them back first.")

/* stages/stages.json: close, stage-label-on, text */
N_ ("Is the label on the supply?")

/* stages/stages.json: close, ends */
N_ ("Covers and label are on, and the record is kept.")

/* stages/stages.json: close, stops */
N_ ("A rail still beyond its limits.")

/* stages/stages.json: close, unproven */
N_ ("The job was not closed: covers, label and record are not confirmed.")
