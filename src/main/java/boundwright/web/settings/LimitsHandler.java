package boundwright.web.settings;

import boundwright.athlete.Level;
import boundwright.athlete.growth.GrowthSettings;
import boundwright.load.Band;
import boundwright.load.GuardLimits;
import boundwright.load.GuardSettings;
import boundwright.load.Season;
import boundwright.load.SeasonStart;
import boundwright.load.account.ContactTimes;
import boundwright.load.account.LoadScale;
import boundwright.quantity.RefusedException;
import boundwright.readiness.GateRules;
import boundwright.store.Workbench;
import boundwright.web.page.Figures;
import boundwright.web.page.Form;
import boundwright.web.page.Pages;
import boundwright.web.page.TwoHands;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The limits of the load, how contacts are weighed, and what is asked before speed is added, as settings. */
public final class LimitsHandler {
  private static final String CAUTION = "-caution";
  private static final String REFUSE = "-refuse";
  private static final String WITH_THEIRS = " with what somebody else changed meanwhile in other fields.";

  private final Workbench bench;
  private final Pages pages;

  public LimitsHandler(Workbench bench, Pages pages) {
    this.bench = bench;
    this.pages = pages;
  }

  /** What is kept. */
  public void show(Context ctx) {
    String said =
        switch (Form.text(ctx, "saved")) {
          case "guard" -> "These limits hold from now on.";
          case "gate" -> "This is asked from now on.";
          case "guard-both" -> "These limits hold from now on," + WITH_THEIRS;
          case "gate-both" -> "This is asked from now on," + WITH_THEIRS;
          case "season" -> "The part of the year is kept.";
          case "defaults" -> "The limits are those of the sources again.";
          default -> "";
        };
    page(ctx, 200, view(kept(), Map.of(), said));
  }

  /** Takes the guard's limits. */
  public void guard(Context ctx) {
    if (Form.text(ctx, "action").equals("defaults")) {
      bench.care().keep(GuardSettings.DEFAULT);
      bench.growth().keep(GrowthSettings.DEFAULT);
      ctx.redirect("/settings/guard?saved=defaults", HttpStatus.SEE_OTHER);
      return;
    }
    bench.together(
        () -> {
          TwoHands both = TwoHands.merge(ctx, guardNow());
          guard(ctx, both);
          return both;
        });
  }

  private void guard(Context ctx, TwoHands both) {
    Map<String, String> refused = asked(both, guardNow());
    Reader in = new Reader(ctx, refused);
    Map<Season, Map<Level, Band>> session = new EnumMap<>(Season.class);
    for (Season s : Season.values()) {
      Map<Level, Band> row = new EnumMap<>(Level.class);
      for (Level level : Level.KNOWN) {
        row.put(level, in.band("session-" + s.name() + "-" + level.name()));
      }
      session.put(s, row);
    }
    Band growing = in.band("growing");
    int weeks = in.whole("growingWeeks");
    int sessions = in.whole("growingSessions");
    int step = in.whole("growingStep");
    int stepWeeks = in.whole("growingStepWeeks");
    double fastGrowth = in.number("fastGrowth");
    double unsureGrowth = in.number("unsureGrowth");
    int growthWeeks = in.whole("growthWeeks");
    Band spacing = in.band("spacing");
    int hardContacts = in.whole("hardContacts");
    int hardSteps = in.whole("hardSteps");
    Band ramp = in.band("ramp");
    int startWeek = in.whole("startWeek");
    int seriesSteps = in.whole("seriesSteps");
    int seriesContacts = in.whole("seriesContacts");
    int seriesRefused = in.whole("seriesRefusedSteps");
    Band pain = in.band("pain");
    double power = in.number("power");
    double standing = in.number("contactStanding");
    double full = in.number("contactFull");
    double set = in.number("weightsSet");
    double sport = in.number("sportHour");
    if (refused.isEmpty()) {
      try {
        GuardLimits limits =
            new GuardLimits(
                session, growing, weeks, sessions, step, stepWeeks, spacing, hardContacts, hardSteps, ramp, startWeek, seriesSteps, seriesContacts, seriesRefused, pain);
        GuardSettings guard = new GuardSettings(limits, new LoadScale(power, new ContactTimes(standing, full), set, sport));
        bench.growth().keep(new GrowthSettings(fastGrowth, unsureGrowth, growthWeeks));
        bench.care().keep(guard);
        ctx.redirect("/settings/guard?saved=guard" + (both.theirs().isEmpty() ? "" : "-both"), HttpStatus.SEE_OTHER);
        return;
      } catch (RefusedException e) {
        refused.put("guard", String.valueOf(e.getMessage()));
      }
    }
    again(ctx, refused);
  }

  /** Keeps from when a part of the year holds for the squad, or takes one out. */
  public void season(Context ctx) {
    try {
      LocalDate from = Form.anyDate(Form.text(ctx, "from"));
      Season season = Form.oneOf(Season.class, "part of the year", Form.text(ctx, "season"));
      SeasonStart start = new SeasonStart(null, from, season);
      if (Form.text(ctx, "action").equals("remove")) {
        bench.load().remove(start);
      } else {
        bench.load().keep(start);
      }
      ctx.redirect("/settings/guard?saved=season", HttpStatus.SEE_OTHER);
    } catch (RefusedException e) {
      again(ctx, Map.of("season", String.valueOf(e.getMessage())));
    }
  }

  private LimitsView view(Map<String, String> fields, Map<String, String> refused, String said) {
    List<SeasonStart> squad = bench.load().seasons().stream().filter(s -> s.athleteId() == null).toList();
    return new LimitsView(fields, refused, said, squad, LocalDate.now(bench.clock()), TwoHands.was(guardNow()), TwoHands.was(gateNow()));
  }

  /** What is asked about the limits that somebody else changed to something else; beside a pair of limits, both. */
  private static Map<String, String> asked(TwoHands both, Map<String, String> now) {
    Map<String, String> refused = new LinkedHashMap<>();
    for (String name : both.both()) {
      refused.merge(
          name.replaceAll(CAUTION + "$|" + REFUSE + "$", ""),
          "Kept meanwhile by somebody else: " + now.get(name) + ". You wrote: " + both.fields().get(name) + ". What stands here holds when you save again.",
          (a, b) -> a + " " + b);
    }
    return refused;
  }

  /** Takes the gate's rules. */
  public void gate(Context ctx) {
    bench.together(
        () -> {
          TwoHands both = TwoHands.merge(ctx, gateNow());
          gate(ctx, both);
          return both;
        });
  }

  private void gate(Context ctx, TwoHands both) {
    Map<String, String> refused = asked(both, gateNow());
    Reader in = new Reader(ctx, refused);
    int days = in.whole("days");
    int reps = in.whole("reps");
    int sessions = in.whole("sessions");
    double notShare = in.number("notShare");
    double stayError = in.number("stayError");
    double shareAbove = in.number("shareAbove");
    double shareChance = in.number("shareChance");
    int passDays = in.whole("passDays");
    int passDayReps = in.whole("passDayReps");
    double passDayShare = in.number("passDayShare");
    int stayDaysShort = in.whole("stayDaysShort");
    int stayDaysLong = in.whole("stayDaysLong");
    int breakDays = in.whole("breakDays");
    int lossSessions = in.whole("lossSessions");
    int goBackReps = in.whole("goBackReps");
    double lossError = in.number("lossError");
    double legFaults = in.number("legFaults");
    double speedError = in.number("speedError");
    double leastGain = in.number("leastGain");
    double fade = in.number("fade");
    double fadeSure = in.number("fadeSure");
    double lateShare = in.number("lateShare");
    if (refused.isEmpty()) {
      try {
        bench
            .ladder()
            .keep(
                new GateRules(
                    new GateRules.Clean(
                        days, reps, sessions, notShare, stayError, shareAbove, shareChance, passDays, passDayReps, passDayShare),
                    new GateRules.Stay(stayDaysShort, stayDaysLong, breakDays),
                    new GateRules.Loss(lossSessions, goBackReps, lossError, legFaults),
                    new GateRules.Speed(speedError, leastGain),
                    new GateRules.Fading(fade, fadeSure, lateShare)));
        ctx.redirect("/settings/guard?saved=gate" + (both.theirs().isEmpty() ? "" : "-both"), HttpStatus.SEE_OTHER);
        return;
      } catch (RefusedException e) {
        refused.put("gate", String.valueOf(e.getMessage()));
      }
    }
    again(ctx, refused);
  }

  private void again(Context ctx, Map<String, String> refused) {
    Map<String, String> written = kept();
    ctx.formParamMap().keySet().forEach(name -> written.put(name, Form.text(ctx, name)));
    page(ctx, 422, view(written, refused, "Nothing was changed yet: correct what is marked below."));
  }

  private Map<String, String> kept() {
    Map<String, String> all = guardNow();
    all.putAll(gateNow());
    return all;
  }

  private Map<String, String> guardNow() {
    GuardSettings guard = bench.care().guard();
    GuardLimits g = guard.limits();
    Map<String, String> f = new LinkedHashMap<>();
    for (Season s : Season.values()) {
      for (Level level : Level.KNOWN) {
        put(f, "session-" + s.name() + "-" + level.name(), g.session(s, level));
      }
    }
    put(f, "growing", g.growing());
    f.put("growingWeeks", String.valueOf(g.growingWeeks()));
    f.put("growingSessions", String.valueOf(g.growingSessions()));
    f.put("growingStep", String.valueOf(g.growingStep()));
    f.put("growingStepWeeks", String.valueOf(g.growingStepWeeks()));
    GrowthSettings growth = bench.growth().settings();
    f.put("fastGrowth", plain(growth.fast_cm_y()));
    f.put("unsureGrowth", plain(growth.unsure_cm_y()));
    f.put("growthWeeks", String.valueOf(growth.weeks()));
    put(f, "spacing", g.spacingHours());
    f.put("hardContacts", String.valueOf(g.hardContacts()));
    f.put("hardSteps", String.valueOf(g.hardSteps()));
    put(f, "ramp", g.ownPercent());
    f.put("startWeek", String.valueOf(g.startWeek()));
    LoadScale scale = guard.scale();
    f.put("power", plain(scale.power()));
    f.put("contactStanding", plain(scale.times().standing_s()));
    f.put("contactFull", plain(scale.times().full_s()));
    f.put("weightsSet", plain(scale.setUnits()));
    f.put("sportHour", plain(scale.sportUnits()));
    f.put("seriesSteps", String.valueOf(g.seriesSteps()));
    f.put("seriesContacts", String.valueOf(g.seriesContacts()));
    f.put("seriesRefusedSteps", String.valueOf(g.seriesRefusedSteps()));
    put(f, "pain", g.pain());
    return f;
  }

  private Map<String, String> gateNow() {
    Map<String, String> f = new LinkedHashMap<>();
    GateRules r = bench.ladder().rules();
    f.put("days", String.valueOf(r.clean().days()));
    f.put("reps", String.valueOf(r.clean().reps()));
    f.put("sessions", String.valueOf(r.clean().sessions()));
    f.put("notShare", String.valueOf(r.clean().notShare()));
    f.put("stayError", String.valueOf(r.clean().stayError()));
    f.put("shareAbove", String.valueOf(r.clean().shareAbove()));
    f.put("shareChance", String.valueOf(r.clean().shareChance()));
    f.put("passDays", String.valueOf(r.clean().passDays()));
    f.put("passDayReps", String.valueOf(r.clean().passDayReps()));
    f.put("passDayShare", String.valueOf(r.clean().passDayShare()));
    f.put("stayDaysShort", String.valueOf(r.stay().shortDays()));
    f.put("stayDaysLong", String.valueOf(r.stay().longDays()));
    f.put("breakDays", String.valueOf(r.stay().breakDays()));
    f.put("lossSessions", String.valueOf(r.loss().sessions()));
    f.put("goBackReps", String.valueOf(r.loss().reps()));
    f.put("lossError", String.valueOf(r.loss().error()));
    f.put("legFaults", String.valueOf(r.loss().legFaults()));
    f.put("speedError", String.valueOf(r.speed().error()));
    f.put("leastGain", String.valueOf(r.speed().leastGain()));
    f.put("fade", String.valueOf(r.fading().most()));
    f.put("fadeSure", String.valueOf(r.fading().sure()));
    f.put("lateShare", String.valueOf(r.fading().lateShare()));
    return f;
  }

  private static String plain(double x) {
    return BigDecimal.valueOf(x).stripTrailingZeros().toPlainString();
  }

  private static void put(Map<String, String> fields, String name, Band band) {
    fields.put(name + CAUTION, Figures.whole(band.caution()));
    fields.put(name + REFUSE, Figures.whole(band.refuse()));
  }

  private void page(Context ctx, int status, LimitsView view) {
    pages.show(ctx, status, "settings/limits", "Load and ready", "settings", view);
  }

  /** Reads field after field and collects the refusals. */
  private record Reader(Context ctx, Map<String, String> refused) {
    int whole(String name) {
      try {
        int n = Form.whole("limit", Form.text(ctx, name));
        if (n < 0 || n > 1000) {
          throw new RefusedException("A limit of " + n + " is out of range: 0 to 1000.");
        }
        return n;
      } catch (RefusedException e) {
        refused.put(name, String.valueOf(e.getMessage()));
        return 1;
      }
    }

    double number(String name) {
      try {
        return Form.number("share", Form.text(ctx, name));
      } catch (RefusedException e) {
        refused.put(name, String.valueOf(e.getMessage()));
        return 0.5;
      }
    }

    Band band(String name) {
      try {
        return new Band(Form.number("limit", Form.text(ctx, name + CAUTION)), Form.number("limit", Form.text(ctx, name + REFUSE)));
      } catch (RefusedException e) {
        refused.put(name, String.valueOf(e.getMessage()));
        return new Band(0, 0);
      }
    }
  }
}
