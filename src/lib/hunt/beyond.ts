/** Something that is seen at a yard and that no test of its wiring finds. */
export interface Beyond {
  readonly id: string;
  /** What is seen. */
  readonly seen: string;
  /** What to look at, or to do. */
  readonly look: string;
}

/** What a hunt through the wiring does not find, and what to do instead. Source: common practice. */
export const beyondWires: readonly Beyond[] = [
  {
    id: 'ring',
    seen: 'All works, and the common return is a ring.',
    look: 'A ring hides its first break. Unplug the supply, take the ring apart at one tag, and try with the buzzer that every tag still reaches the return.'
  },
  {
    id: 'turned',
    seen: 'A deck that turns shorts after half a turn.',
    look: 'Half a turn exchanges its rails. It needs a reversing switch; a deck that slides needs none.'
  },
  {
    id: 'stock across',
    seen: 'A road that is off comes alive, or the controller trips, for a moment.',
    look: 'Wheels stand across a gap and bridge it. Push all stock clear of the gaps, and try again.'
  },
  {
    id: 'wrong rail',
    seen: 'Both sections of a cut road are live with either switch.',
    look: 'Look in which rail the gap is: it belongs in the feed rail, for the return rails of all roads are joined by the loop anyway.'
  },
  {
    id: 'two on',
    seen: 'Two locos move at once.',
    look: 'Look at the panel: is a switch still on from before? Switch everything off, then one road on.'
  },
  {
    id: 'shakes',
    seen: 'It cuts out when somebody leans on the deck.',
    look: 'Rock the deck with the test lamp on the road. Set the interlock switch so that the pin works it well past its click, and look for wear of the pin.'
  },
  {
    id: 'runs in',
    seen: 'A loco runs off into the well.',
    look: 'Look at the gap proof: which road is live there? A pushed train falls first, so stops and sides are needed as well.'
  },
  {
    id: 'moves',
    seen: 'It comes and goes while the deck moves.',
    look: 'Unplug the supply, clip the buzzer to both ends of a wire of the lead, and bend the lead at each clamp and at the plug through the whole travel.'
  },
  {
    id: 'lamp shows switch',
    seen: 'The panel lamp is lit and the road is dead.',
    look: 'A lamp on its own supply shows the switch, not the rail: that is as it was built. Hold the test lamp to the rails.'
  },
  {
    id: 'lamp follows knob',
    seen: 'A panel lamp dims with the knob, and is dark in reverse.',
    look: 'It hangs on the controller. Give the lamps a supply of their own to have them steady.'
  },
  {
    id: 'shared supply',
    seen: 'Two controllers trip when their knobs stand opposite ways.',
    look: 'One supply feeds both, and they share the return. Give each a supply of its own; the checks page says why.'
  },
  {
    id: 'warm',
    seen: 'A wire is warm or smells, and nothing trips.',
    look: 'Switch off and unplug at once. Compare the limit with what the thinnest wire may carry, on the checks page; fit a fuse for that wire.'
  },
  {
    id: 'rotary kicks',
    seen: 'With a rotary the next road kicks as you turn.',
    look: 'The rotary makes before it breaks. Turn the knob to zero first, or fit one that breaks before it makes.'
  },
  {
    id: 'buzzes',
    seen: 'A motor buzzes against the end stop.',
    look: 'Turn the knob to zero. Leave a dead length before the stop, or put a diode in the feed of one.'
  },
  {
    id: 'diode',
    seen: 'A loco cannot leave a road with a diode in its feed, or does not stop there.',
    look: 'The diode is the wrong way round: try it with the diode range of the meter, and exchange its ends.'
  },
  {
    id: 'derails',
    seen: 'Stock derails at the edge of the deck on one road.',
    look: 'Lay a straight-edge across the joint from above and from the side, feel for steps, and try the lightest and the heaviest wagon.'
  },
  {
    id: 'away',
    seen: 'It works at home and not at the show.',
    look: 'Level the frame again, set the pins again, and look that each plug is in its own socket: colour them alike in pairs.'
  },
  {
    id: 'ghost',
    seen: 'The meter shows a few volts on a road that is off.',
    look: 'Hold the test lamp there. If it stays dark the road is off: the volts are a ghost that a lamp or a long wire lets through.'
  },
  {
    id: 'stock left',
    seen: 'The buzzer sounds from rail to rail everywhere, and nothing trips.',
    look: 'Stock was left on the rails. Lift it all off, and measure again.'
  }
];
