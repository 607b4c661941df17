package boundwright.approach.aim;

import boundwright.jump.CombinedTable;
import boundwright.jump.Event;
import boundwright.jump.JumpLimits;
import boundwright.quantity.Limits;
import boundwright.quantity.RefusedException;
import java.util.List;

/** What the attempts are for. A goal says what a best of so many whole centimetres is worth in the end. */
public sealed interface Goal {
  /** Worth of ending with a best in [centimetres, centimetres + 1). */
  double worth(int centimetres);

  /** Worth of ending without a mark. */
  double noMark();

  /**
   * The longest best, as it stands on the result sheet: every mark rounded down to the whole centimetre (TR 30.1, read). Distances
   * before rounding down, as the collection states them, are half a centimetre more on average wherever there is a mark.
   *
   * @param noMark_m what ending without a mark counts as [m]: 0, or a mark one could live with
   */
  record Longest(double noMark_m) implements Goal {
    /** Refuses a value that no one can live with. */
    public Longest {
      Limits.within("value of no mark", noMark_m, -20, JumpLimits.MAX_JUMP_M, "m", "0 counts it as nothing.");
    }

    /** No mark counted as 1 m below the mean (judgement, {@link AimSettings#DEFAULT}). */
    public static Longest usual(JumpForm form) {
      return new Longest(form.effectiveMean_m() - AimSettings.DEFAULT.noMarkBelow_m());
    }

    @Override
    public double worth(int centimetres) {
      return centimetres / 100.0;
    }

    @Override
    public double noMark() {
      return noMark_m;
    }
  }

  /**
   * At least a distance, such as a qualifying mark.
   *
   * @param centimetres official distance to reach [cm]
   */
  record Target(int centimetres) implements Goal {
    /** Refuses a target nobody jumps. */
    public Target {
      JumpLimits.eitherJump("target", centimetres / 100.0);
    }

    /** A target in the triple jump, see {@link #metres(Event, double)}. */
    public static Target metres(double metres) {
      return metres(Event.TRIPLE_JUMP, metres);
    }

    /** A target in metres, to the centimetre; a rounded-down result reaches 14.005 m only at 14.01. */
    public static Target metres(Event event, double metres) {
      event.jump("target", metres);
      return new Target((int) Math.ceil(metres * 100 - 1e-6));
    }

    /** The distance [m]. */
    public double metres() {
      return centimetres / 100.0;
    }

    @Override
    public double worth(int best) {
      return best >= centimetres ? 1 : 0;
    }

    @Override
    public double noMark() {
      return 0;
    }
  }

  /**
   * The most points of the long jump in a combined event. No mark is worth nothing there, so it is aimed for more carefully than for
   * the longest best.
   *
   * @param table of the combined event
   */
  record Points(CombinedTable table) implements Goal {
    @Override
    public double worth(int centimetres) {
      return table.ofCentimetres(centimetres);
    }

    @Override
    public double noMark() {
      return 0;
    }
  }

  /**
   * A place: fewer than {@code places} rivals may end level with or ahead of you. A level mark counts against you, since
   * the second best decides it.
   *
   * @param places 8 to make the last three rounds, 1 to beat every rival in the list
   * @param rivals the others
   */
  record Place(int places, List<Rival> rivals) implements Goal {
    /** Takes a copy; refuses a place that is given away. */
    public Place {
      rivals = List.copyOf(rivals);
      Limits.count("A place", places, 1, 24, "8 makes the last three rounds.");
      if (rivals.size() < places) {
        throw new RefusedException(
            "With " + rivals.size() + " rivals, place " + places + " is safe with any mark or none: everybody goes on. Aim for the longest best.");
      }
    }

    /** Beat one rival. */
    public static Place ahead(Rival rival) {
      return new Place(1, List.of(rival));
    }

    /** Be among the best eight after three rounds; each rival's attempts left are those of the first three rounds. */
    public static Place topEight(List<Rival> rivals) {
      return new Place(8, rivals);
    }

    /** Chance that fewer than {@code places} rivals reach {@code centimetres}. */
    @Override
    public double worth(int centimetres) {
      double[] ahead = new double[places];
      ahead[0] = 1;
      for (Rival r : rivals) {
        double below = r.below(centimetres);
        for (int i = places - 1; i >= 0; i--) {
          ahead[i] = ahead[i] * below + (i > 0 ? ahead[i - 1] * (1 - below) : 0);
        }
      }
      double sum = 0;
      for (double p : ahead) {
        sum += p;
      }
      return sum;
    }

    /** No mark is behind everybody with one; level with those without, which is not counted. */
    @Override
    public double noMark() {
      return 0;
    }

    /**
     * The distance that makes the place at a chance [m], whatever is jumped: the smallest whole centimetre.
     *
     * @param chance 0.05 to 0.99
     * @throws RefusedException if 19 m would not
     */
    public double needed_m(double chance) {
      Limits.within("chance", chance, 0.05, 0.99, "", "0.9 means nine times in ten.");
      int low = (int) (100 * JumpLimits.MIN_JUMP_M);
      int high = (int) (100 * JumpLimits.MAX_JUMP_M);
      if (worth(high) < chance) {
        throw new RefusedException("No distance up to 19 m makes place " + places + " at a chance of " + chance + ". Check the rivals' marks.");
      }
      while (low < high) {
        int mid = (low + high) / 2;
        if (worth(mid) >= chance) {
          high = mid;
        } else {
          low = mid + 1;
        }
      }
      return low / 100.0;
    }
  }
}
