package boundwright.evidence;

import java.util.List;

/** What the jump, the run-up and the meet stand on, each with its standing; listed after {@link Sources}' own. */
public final class JumpSources {
  /** Phases. */
  public static final Source PHASE_LENGTH =
      new Source("phase-length", "Phase length = take-off distance + flight distance + landing distance; official = effective less "
          + "toe-to-board", "Hay", Standing.MEMORY);
  /** Classes by shares. */
  public static final Source PHASE_CLASS =
      new Source("phase-class", "Hop- or jump-dominated when that share is at least 2 percentage points above the next largest, else "
          + "balanced", "Hay 1992", Standing.MEMORY);
  /** Thresholds on the conversion coefficient. */
  public static final Source CONVERSION_THRESHOLDS =
      new Source("conversion-thresholds", "A1 up to 0.5 goes with a long hop, from 0.9 with a long jump, between there is little in it",
          "quoted in coach education, no paper named", Standing.MEMORY);
  /** Published shares of a women's final. */
  public static final Source REFERENCE_JUMPS =
      new Source("reference-jumps", "Lengths of the three phases in championship finals 2019 and 2021", "press reports",
          Standing.SECOND_HAND);
  /** A men's final. */
  public static final Source REFERENCE_1995 =
      new Source("reference-1995", "Phase lengths of an 18.29 m jump, men's world final 1995", "lengths recalled, shares from press reports",
          Standing.MEMORY);
  /** Ten women. */
  public static final Source REFERENCE_TEN_WOMEN =
      new Source("reference-ten-women", "Mean shares 36.5/29.3/34.2 % of ten women, Thessaloniki 2008",
          "Panoutsakopoulos and Kollias 2008, New Studies in Athletics 23(4):53-61", Standing.READ);
  /** Learning a line. */
  public static final Source CONTACT_LEARNING =
      new Source("contact-learning", "An athlete's contact line before any contact of theirs is measured: middle, width and noise",
          "first guess of the makers", Standing.JUDGEMENT);
  /** Steps and speed. */
  public static final Source SPEED_BY_STEPS =
      new Source("speed-by-steps", "Distance and speed grow with the number of steps, ever less (eight long jumpers from 6-8-10-12 steps)",
          "Beres et al. 2014, Kinesiology 46:88-96", Standing.READ);
  /** Accuracy along the runway. */
  public static final Source ACCURACY =
      new Source("accuracy", "The spread of the foot grows down the runway, peaks about five steps out and falls to .05-.08 m at the board "
          + "(elite), .10-.16 m at 12-13 years; steering over the last five steps",
          "Lee et al. 1982; Hay 1988; Panteli et al. 2010 (read in part)", Standing.READ);
  /** Fouls and what is given away. */
  public static final Source FOUL_SHARE =
      new Source("foul-share", "Fouls 29.6 % (85 of 287) of men's and 31.3 % of women's attempts in Olympic long-jump finals 2004-2020; about "
          + "8 cm given away", "a count of the finals, no paper named", Standing.MEMORY);
  /** A start mark in wind. */
  public static final Source WIND_START =
      new Source("wind-start", "The run-up is longer with a tail wind and shorter with a head wind; how much is learned, never printed",
          "a coaching text of 1929, not named", Standing.MEMORY);
  /** Aiming. */
  public static final Source AIM_STUDY =
      new Source("aim-study", "Where to aim so that the best of several attempts is longest",
          "Ladany, Humes and Sphicas 1975, Operational Research Quarterly 26:495-506", Standing.MEMORY);
  /** The aim's arithmetic. */
  public static final Source AIM =
      new Source("aim", "Gap and effective distance normal and independent; foul when the gap is below 0; dynamic programming over "
          + "attempts left and the best so far", "checked by quadrature and by simulated competitions", Standing.WORKED);
  /** Censored gaps. */
  public static final Source CENSORED =
      new Source("censored-gaps", "A foul of unknown size counts as a gap below 0 (censored normal)",
          "form of the likelihood: Olsen 1978, Econometrica 46:1211-1215", Standing.MEMORY);
  /** Foul. */
  public static final Source FOUL_RULE =
      new Source("foul-rule", "Foul when any part of the take-off foot or shoe breaks the vertical plane of the take-off line; rounded "
          + "down to 0.01 m", "World Athletics TR 30.1.1, since 1 November 2021", Standing.READ);
  /** Boards. */
  public static final Source BOARDS =
      new Source("boards", "Triple-jump line to the near end of the pit 13 m (men) and 11 m (women) in international meets; to the far "
          + "end at least 21 m; runway at least 40 m", "World Athletics rules", Standing.READ);
  /** Long-jump boards. */
  public static final Source BOARDS_LONG =
      new Source("boards-long", "Long-jump line 1 to 3 m before the near end of the pit, at least 10 m before the far end",
          "World Athletics rules", Standing.MEMORY);
  /** Points of combined events. */
  public static final Source COMBINED_TABLES =
      new Source("combined-tables", "Points of the long jump in combined events = floor(a (cm - b)^c): .14354, 220, 1.4 (decathlon), .188807, "
          + "210, 1.41 (heptathlon)", "scoring tables for combined events (coefficients recalled, no table at hand)", Standing.MEMORY);
  /** Attempts in combined events. */
  public static final Source COMBINED_ROUNDS =
      new Source("combined-rounds", "Three attempts for everybody in the long jump of a combined event", "World Athletics rules, as a page reports them",
          Standing.SECOND_HAND);
  /** Wind in combined events. */
  public static final Source COMBINED_WIND =
      new Source("combined-wind", "A total counts for records if the average wind of the events in which it is measured is at most +2.0 m/s",
          "World Athletics rules, 260.18, as a page reports it", Standing.SECOND_HAND);
  /** Wind in combined events, older editions. */
  public static final Source COMBINED_WIND_OLD =
      new Source("combined-wind-old", "Until 2009: or if none of these winds was above +4.0 m/s", "pages about the change of 2010",
          Standing.SECOND_HAND);
  /** Trade of speed for angle. */
  public static final Source SPEED_FOR_ANGLE =
      new Source("speed-for-angle", "Take-off speed falls and take-off height rises as a long jumper takes off more steeply; the best angle follows "
          + "from each athlete's own line", "Linthorne, Guzman and Bridgett 2005, J Sports Sci 23:703-712 (abstract, in a translation)",
          Standing.READ);
  /** Components of a long jump. */
  public static final Source LONG_JUMP_PARTS =
      new Source("long-jump-parts", "Distance = take-off distance + flight distance + landing distance, less what is given away at the board",
          "Hay; used in Wakai and Linthorne 2005 for standing jumps (abstract read)", Standing.MEMORY);
  /** What the first guess of the trade is. */
  public static final Source TRADE_GUESS =
      new Source("trade-guess", "Speed and angle of a take-off before any is measured: no slope either way, wide; no advice from fewer than eight "
          + "take-offs or less than a degree of spread", "first guess of the makers", Standing.JUDGEMENT);
  /** Long-jump drills. */
  public static final Source LONG_JUMP_DRILLS =
      new Source("long-jump-drills", "Pop-ups from a short run, the last two steps alone, run-run-jump", "common practice", Standing.COMMON_PRACTICE);
  /** Take-offs in a row. */
  public static final Source TAKE_OFFS_IN_A_ROW =
      new Source("take-offs-in-a-row", "Before any rep of the kind is measured: flights that land on one foot 0.75 of those into the sand, running steps after a landing "
          + "0.92 of the run-up's, and how athletes, days and reps differ", "first guess of the makers", Standing.JUDGEMENT);
  /** Take-offs in a row in the load. */
  public static final Source LOAD_IN_A_ROW =
      new Source("take-offs-in-a-row-load", "In the load each take-off counts as one contact of its leg, and so does each landing that is not in the sand; running steps "
          + "between do not. Each weighs as a take-off from a short run", "the makers", Standing.JUDGEMENT);
  /** High school. */
  public static final Source BOARDS_SCHOOL =
      new Source("boards-school", "Boards about 32 ft (boys) and 24 ft (girls) from the pit; measured to the lesser quarter inch or "
          + "centimetre", "United States high-school rules", Standing.READ);
  /** Short boards. */
  public static final Source BOARDS_SHORT =
      new Source("boards-short", "Boards at 7 and 9 m for youth and club meets", "common practice", Standing.COMMON_PRACTICE);
  /** Wind. */
  public static final Source WIND_RULE =
      new Source("wind-rule", "Wind over 5 s, rounded to the next higher tenth in the positive direction, legal up to +2.0 m/s",
          "World Athletics rules", Standing.MEMORY);
  /** Rounds. */
  public static final Source ROUNDS =
      new Source("rounds", "More than eight athletes: three trials, the best eight get three more; ties by the second best, then the third",
          "World Athletics rules", Standing.READ);
  /** Order. */
  public static final Source FINAL_ORDER =
      new Source("final-order", "Order of the last three rounds: worst first after three rounds; newer editions again before the last round",
          "World Athletics rules, editions differ", Standing.MEMORY);
  /** Points. */
  public static final Source SCORING =
      new Source("scoring", "Points = floor(a (x + b)^2 - 5000); the coefficients agree with all 4,079 printed indoor entries of 2022",
          "World Athletics scoring (form read, coefficients recalled)", Standing.MEMORY);
  /** Wind and distance. */
  public static final Source WIND_DISTANCE =
      new Source("wind-distance", "A legal tail wind is worth 5 cm by statistics and 14-23 cm by models in the long jump: a range, never "
          + "one corrected mark", "statistics by Murrie (abstract); no paper named for the models", Standing.MEMORY);
  /** No mark. */
  public static final Source NO_MARK =
      new Source("no-mark", "No mark counts as 1 m below the athlete's mean; an aim needs 4 attempts at the board, 2 measured gaps and 3 "
          + "legal marks, and rests on the newest 60", "first guess of the makers", Standing.JUDGEMENT);
  /** Rivals. */
  public static final Source RIVALS =
      new Source("rivals", "A rival's marks scatter by 0.25 m about their mean in this meet; three attempts in ten foul",
          "first guess of the makers; fouls as in long-jump finals 2004-2020", Standing.JUDGEMENT);
  /** Limits. */
  public static final Source MEET_LIMITS =
      new Source("meet-limits", "Triple jump 3-19 m, long jump 1-10 m, wind -8 to +12 m/s, gap -0.60 to +2.00 m, 0-26 steps, run-up 0-55 m",
          "judgement of the makers", Standing.JUDGEMENT);
  /** From the short run to the full run. */
  public static final Source FULL_RUN =
      new Source("full-run", "Full-run distance is told best by a quadratic in the approach steps (eight long jumpers: 6.95 m told, 6.96 m jumped); for the "
          + "triple jump nothing was found", "Beres et al. 2014, Kinesiology 46:88-96 (abstract)", Standing.READ);
  /** What the squad's own distances replace. */
  public static final Source FULL_RUN_PRIOR =
      new Source("full-run-prior", "Before any jump: 1.2 m (0.2 to 2.2) from 8 to 16 steps for a jumper of 13 m, and how athletes, days and jumps differ; "
          + "nothing is told more than four steps beyond what anybody has jumped from", "first guess of the makers", Standing.JUDGEMENT);
  /** Wind on a triple jump. */
  public static final Source WIND_TRIPLE =
      new Source("wind-triple", "7.6 cm per m/s of tail wind in the triple jump, from one women's qualification on one morning: a wide first guess that the "
          + "log replaces", "one championship study, not named in the notes", Standing.MEMORY);
  /** Wind on a long jump. */
  public static final Source WIND_LONG =
      new Source("wind-long", "Long jump: still-air mark = mark - .031 w + .0027 w2, w the tail wind in m/s; its bend is the first guess for the triple jump's",
          "an abstract by Murrie, its year not noted: no paper named", Standing.MEMORY);
  /** Winds that were estimated. */
  public static final Source WIND_ESTIMATES =
      new Source("wind-estimates", "A gauge is good to 0.2 m/s, a flag to 1.0, winds along a runway scatter by 1.5, from meet to meet by 1.3 and from attempt to "
          + "attempt by 0.8", "judgement of the makers", Standing.JUDGEMENT);
  /** Warm-up and call room. */
  public static final Source WARM_UP =
      new Source("warm-up", "About an hour of warm-up counted back from the call room, which closes about half an hour before the start; both can be set for each "
          + "meet", "common practice", Standing.COMMON_PRACTICE);

  /** All of them. */
  public static final List<Source> ALL =
      List.of(PHASE_LENGTH, PHASE_CLASS, CONVERSION_THRESHOLDS, REFERENCE_JUMPS, REFERENCE_1995, REFERENCE_TEN_WOMEN, CONTACT_LEARNING,
          SPEED_BY_STEPS, ACCURACY, FOUL_SHARE, WIND_START, AIM_STUDY, AIM, CENSORED, FOUL_RULE, BOARDS, BOARDS_SCHOOL, BOARDS_SHORT,
          BOARDS_LONG, COMBINED_TABLES, COMBINED_ROUNDS, COMBINED_WIND, COMBINED_WIND_OLD, SPEED_FOR_ANGLE, LONG_JUMP_PARTS, TRADE_GUESS,
          LONG_JUMP_DRILLS, TAKE_OFFS_IN_A_ROW, LOAD_IN_A_ROW, WIND_RULE, ROUNDS, FINAL_ORDER, SCORING, WIND_DISTANCE, NO_MARK, RIVALS, FULL_RUN, FULL_RUN_PRIOR, WIND_TRIPLE, WIND_LONG,
          WIND_ESTIMATES, WARM_UP, MEET_LIMITS);

  private JumpSources() {}
}
