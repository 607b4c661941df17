package boundwright.season.chance;

import boundwright.athlete.Surface;
import boundwright.season.SeasonInput;
import boundwright.season.SeasonPlan;
import boundwright.season.Session;
import boundwright.season.Unplanned;
import boundwright.season.Venue;
import java.util.List;

/** The places of one simulated season: where it rains, and how many are where. Mutable, for one thread. */
final class Ground {
  static final int NOWHERE = -2;

  private final List<Venue> venues;
  private final boolean[][] open;
  private final boolean[] grass;
  private final double[] rainShare;
  private final long[] date;
  /** By day and place, as planned. */
  private final int[][] planned;
  private final int[][] there;
  private final int[] extra;
  private final boolean[] rain;

  Ground(SeasonInput input, SeasonPlan plan, Unplanned unplanned) {
    venues = input.venues();
    int days = input.days();
    open = new boolean[days][venues.size()];
    grass = new boolean[venues.size()];
    rainShare = new double[days];
    date = new long[days];
    planned = new int[days][venues.size()];
    there = new int[days][venues.size()];
    extra = new int[days];
    rain = new boolean[days];
    for (int v = 0; v < venues.size(); v++) {
      grass[v] = venues.get(v).surface() == Surface.GRASS;
      for (int t = 0; t < days; t++) {
        open[t][v] = venues.get(v).open(input.day(t));
      }
    }
    for (int t = 0; t < days; t++) {
      rainShare[t] = unplanned.grassClosed(input.day(t).getMonth());
      date[t] = input.day(t).toEpochDay();
    }
    plan.years().forEach(y -> y.days().forEach(d -> count(input.number(d.date()), d.session())));
  }

  private void count(int t, Session session) {
    int v = PlannedWork.number(venues, session.venue());
    if (v >= 0 && t >= 0 && t < planned.length) {
      planned[t][v]++;
    }
  }

  /** Begins a season. */
  void begin(World world) {
    long key = world.key(World.What.RAIN, 0);
    for (int t = 0; t < rain.length; t++) {
      rain[t] = World.uniform(key, date[t]) < rainShare[t];
      System.arraycopy(planned[t], 0, there[t], 0, planned[t].length);
      extra[t] = 0;
    }
  }

  /** Where a planned session can be done on its day: there, elsewhere, or {@link #NOWHERE}. */
  int place(int t, PlannedWork work) {
    int v = work.venue;
    if (v < 0 || (open[t][v] && !(rain[t] && grass[v]))) {
      return v;
    }
    int best = NOWHERE;
    for (int other = 0; other < venues.size(); other++) {
      if (open[t][other] && !(rain[t] && grass[other]) && there[t][other] < venues.get(other).athletes() && suits(venues.get(other), work) && (best < 0 || softer(other, best))) {
        best = other;
      }
    }
    if (best >= 0) {
      there[t][v]--;
      there[t][best]++;
    }
    return best;
  }

  private boolean softer(int a, int b) {
    return venues.get(b).surface() == Surface.TRACK && venues.get(a).surface() != Surface.TRACK;
  }

  private static boolean suits(Venue venue, PlannedWork work) {
    return venue.surface() != Surface.CONCRETE && (venue.sand() || !work.kind.sand());
  }

  /** Takes a place in the hour more, if there is one left that day. */
  boolean joins(int t, WhatIf.MoreHours more, int venue) {
    boolean closed = rain[t] && grass[venue];
    if (closed || !more.on(date[t]) || extra[t] >= venues.get(venue).athletes()) {
      return false;
    }
    extra[t]++;
    return true;
  }
}
