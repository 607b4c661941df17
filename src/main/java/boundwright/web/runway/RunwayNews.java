package boundwright.web.runway;

import boundwright.athlete.Athlete;
import boundwright.flight.Rep;
import boundwright.phone.Packer;
import boundwright.phone.Parcel;
import boundwright.store.Workbench;
import boundwright.technique.FaultAdvice;
import boundwright.technique.FaultCatalogue;
import boundwright.technique.FaultTick;
import boundwright.web.page.Ticks;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What a phone is told: the whole squad, or only what changed since. */
final class RunwayNews {
  /** Over how many reps the faults that an athlete shows most are counted (judgement: about a month). */
  private static final int RECENT = 60;
  private static final int CHIPS = 3;

  private final Workbench bench;
  private final Packer packer;

  RunwayNews(Workbench bench) {
    this.bench = bench;
    this.packer =
        new Packer(
            bench.athletes(), bench.reps(), bench.logbook(), bench.settings(), bench.workLog(), bench.load(), bench.care(),
            () -> bench.advisor().rungs(), tokens(bench), bench.clock());
  }

  private static Packer.Tokens tokens(Workbench bench) {
    return new Packer.Tokens() {
      @Override
      public @Nullable String of(long repId) {
        return bench.track().token(repId);
      }

      @Override
      public List<String> gone(long athleteId, LocalDate day) {
        return bench.track().goneTokens(athleteId, day);
      }
    };
  }

  /**
   * What the page needs beside the marks.
   *
   * @param day of the session
   * @param unit {@code METRES} or {@code FEET_INCHES}
   * @param faults that can be ticked
   */
  record Page(String day, String unit, List<Fault> faults) {}

  /** A fault with what is said about it. */
  record Fault(String key, String label, String say) {}

  /**
   * One athlete.
   *
   * @param id the number
   * @param text for the phone's model
   * @param top keys of the faults that this athlete shows most
   * @param hash changes when any of it does
   */
  record One(long id, String text, List<String> top, String hash) {}

  /**
   * The squad.
   *
   * @param parcel for the phone's model
   * @param page what the page needs beside
   * @param head changes when anything but an athlete's own part does
   * @param all athlete by athlete
   */
  record Squad(String parcel, Page page, String head, List<One> all) {}

  private record Read(String stamp, Squad squad) {}

  private @Nullable Read last;

  /** The squad as it is now; read again only after something was written. */
  synchronized Squad squad() {
    String stamp = bench.stamp() + " " + LocalDate.now(bench.clock());
    Read kept = last;
    if (kept == null || !kept.stamp.equals(stamp)) {
      kept = new Read(stamp, read());
      last = kept;
    }
    return kept.squad;
  }

  private Squad read() {
    List<Athlete> athletes = bench.attendance().here();
    Parcel parcel = packer.pack(athletes);
    Page page = page();
    List<One> all = new ArrayList<>();
    for (Parcel.Part part : parcel.parts()) {
      all.add(one(part));
    }
    String head = new Parcel(parcel.day(), parcel.zone(), Instant.EPOCH, parcel.settings(), parcel.guard(), parcel.plan(), List.of()).text();
    return new Squad(parcel.text(), page, hash(head + page + all.stream().map(One::id).toList()), List.copyOf(all));
  }

  /** These athletes as they are now; those who are not there any more are left out. */
  List<One> these(Set<Long> ids) {
    return ids.stream().map(bench.athletes()::byId).flatMap(Optional::stream).map(a -> one(packer.part(a))).toList();
  }

  private One one(Parcel.Part part) {
    long id = part.profile().athlete().id();
    String text = part.text();
    List<String> top = top(id);
    return new One(id, text, top, hash(text + top));
  }

  private Page page() {
    FaultCatalogue catalogue = new FaultCatalogue(bench.looks().ownFaults());
    return new Page(
        LocalDate.now(bench.clock()).toString(),
        bench.settings().settings().unit().name(),
        catalogue.all().stream().map(RunwayNews::fault).toList());
  }

  private static Fault fault(FaultAdvice a) {
    return new Fault(a.key(), a.label(), a.say());
  }

  /** The faults that this athlete shows most, filled up from the head of the list. */
  private List<String> top(long athleteId) {
    Map<String, Integer> seen = new LinkedHashMap<>();
    for (Rep rep : bench.reps().recent(athleteId, RECENT)) {
      if (rep.judged()) {
        Set<String> keys = new LinkedHashSet<>();
        Ticks.kept(rep).orElse(List.of()).stream().map(FaultTick::key).forEach(keys::add);
        keys.forEach(k -> seen.merge(k, 1, Integer::sum));
      }
    }
    List<String> known = new FaultCatalogue(bench.looks().ownFaults()).all().stream().map(FaultAdvice::key).toList();
    List<String> out = new ArrayList<>(seen.keySet());
    out.retainAll(known);
    out.sort((a, b) -> Integer.compare(seen.getOrDefault(b, 0), seen.getOrDefault(a, 0)));
    known.stream().filter(k -> !out.contains(k)).forEach(out::add);
    return List.copyOf(out.subList(0, Math.min(CHIPS, out.size())));
  }

  private static String hash(String text) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8)), 0, 6);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
