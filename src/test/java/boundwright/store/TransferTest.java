package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.account.Accounts;
import boundwright.account.Club;
import boundwright.athlete.Athlete;
import boundwright.athlete.person.Consent;
import boundwright.athlete.person.Scope;
import boundwright.demo.DemoSquad;
import boundwright.load.LegCare.MedicalHold;
import boundwright.quantity.RefusedException;
import boundwright.store.backup.Catalogue;
import boundwright.store.transfer.Baggage;
import boundwright.store.transfer.Transfers;
import boundwright.technique.Fault;
import boundwright.technique.FaultTick;
import boundwright.technique.LookRepository.SecondLook;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** An athlete changes clubs: all that is theirs, in one step, with their yes. */
@SuppressWarnings("NullAway.Init") // JUnit fills the folders in
class TransferTest {
  @TempDir Path ours;
  @TempDir Path theirs;
  private Workbench first;
  private Workbench second;
  private Club other;
  private Transfers transfers;
  private Athlete bram;

  @BeforeEach
  void open() {
    first = Stores.open(ours, Fixtures.CLOCK);
    second = Stores.open(theirs, Fixtures.CLOCK);
    other = new Accounts(first.accounts(), Fixtures.CLOCK, new Random(1)).addClub("Other pit");
    transfers = new Transfers(first, club -> club == Club.FIRST ? first : second, new Random(1));
    DemoSquad.fill(first);
    bram = first.athletes().byName("Bram Curlew").orElseThrow();
    AthleteFileTest.fill(first, List.of(bram, first.athletes().byName("Tovi Plover").orElseThrow()));
    first.care().openHold(bram.id(), new MedicalHold(0, Fixtures.TODAY, "shin, seen by the clinic", null, null));
  }

  @AfterEach
  void close() {
    second.close();
    first.close();
  }

  private long offered() {
    first.people().say(bram.id(), Scope.MOVE, true);
    first.people().say(bram.id(), Scope.FILM, true);
    transfers.offer(Club.FIRST, bram, other.id());
    assertThat(transfers.offeredTo(Club.FIRST, bram.id())).contains(other);
    assertThat(transfers.to(Club.FIRST)).isEmpty();
    return transfers.to(other.id()).get(0).id();
  }

  @Test
  void allThatIsTheirsGoesAlongAndNothingOfThemStays() {
    assertThat(first.loadDesk().day(bram).said()).startsWith("So far refused (3 contacts)");
    first.looks().keep(new Fault("arms-late", "Arms late", "they swing after the foot", "tired", "Arms with the foot", "march"));
    first.looks().keep(new Fault("never-seen", "Never seen", "nowhere", "none", "Nothing", "march"));
    first.looks().keep(new SecondLook(first.reps().inOrder(bram.id()).get(1).id(), "KS", List.of(FaultTick.of("arms-late"))));
    Map<String, List<Map<String, @Nullable Object>>> before = new AthleteFile(first).of(bram);
    long there = transfers.take(other.id(), offered());
    Athlete now = second.athletes().byId(there).orElseThrow();
    assertThat(now.name()).isEqualTo(bram.name());
    assertThat(second.loadDesk().day(now).said()).as("held there too").startsWith("So far refused (3 contacts)");
    assertThat(second.reps().inOrder(there)).hasSameSizeAs(before.get("rep"));
    Map<String, List<Map<String, @Nullable Object>>> after = new AthleteFile(second).of(now);
    for (String table : List.of("pain", "medical_hold", "guard_override", "rung_decision", "second_look", "clip_points", "clip_correction", "meet", "meet_attempt", "measured_jump")) {
      assertThat(after.get(table)).as(table).hasSameSizeAs(before.getOrDefault(table, List.of()));
    }
    assertThat(after.get("clip")).allSatisfy(c -> assertThat(String.valueOf(c.get("film_kept"))).isEqualTo("0"));
    assertThat(second.people().said(there)).extracting(Consent::scope).as("films are asked for anew").containsExactly(Scope.MOVE);
    assertThat(second.looks().ownFaults()).extracting(Fault::key).as("only what was seen of them").containsExactly("arms-late");
    assertThat(new AthleteFile(first).rows(bram.id())).isEmpty();
    assertThat(first.athletes().byName("Tovi Plover")).isPresent();
    assertThat(AthleteFileTest.counts(second).get("athlete")).isEqualTo(1);
    assertThat(transfers.to(other.id())).isEmpty();
  }

  @Test
  void withoutTheirYesOrWithANameThatIsTakenNothingIsChanged() {
    assertThatThrownBy(() -> transfers.offer(Club.FIRST, bram, other.id())).isInstanceOf(RefusedException.class).hasMessageContaining("nobody asked");
    assertThatThrownBy(() -> transfers.offer(Club.FIRST, bram, Club.FIRST)).hasMessageContaining("no other club");
    long offer = offered();
    second.athletes().add(Fixtures.athlete("bram curlew"));
    Map<String, Integer> there = AthleteFileTest.counts(second);
    assertThatThrownBy(() -> transfers.take(other.id(), offer)).isInstanceOf(RefusedException.class).hasMessageContaining("in this club already");
    assertThat(AthleteFileTest.counts(second)).isEqualTo(there);
    first.people().withdraw(bram, Scope.MOVE);
    assertThatThrownBy(() -> transfers.take(other.id(), offer)).hasMessageContaining("withdrawn");
    transfers.withdraw(Club.FIRST, bram.id());
    assertThatThrownBy(() -> transfers.take(other.id(), offer)).hasMessageContaining("not there any more");
    assertThat(first.athletes().byId(bram.id())).isPresent();
  }

  @Test
  void aTakingThatWasCutOffIsFinishedWhenItIsAskedForAgain() {
    long offer = offered();
    // the other store has them, this one was not erased yet: as a kill between the two leaves it
    String token = first.transactions().read(h -> h.createQuery("SELECT token FROM transfer_offer").mapTo(String.class).one());
    second.once(token, () -> second.athletes().add(Fixtures.athlete(bram.name())).id());
    long there = transfers.take(other.id(), offer);
    assertThat(second.athletes().byName(bram.name()).orElseThrow().id()).isEqualTo(there);
    assertThat(first.athletes().byId(bram.id())).isEmpty();
  }

  @Test
  void everyTableThatKnowsOfAnAthleteGoesOrStaysForAReason() {
    Set<String> known = new HashSet<>();
    known.add("athlete");
    for (int size = 0; size != known.size(); ) {
      size = known.size();
      for (Catalogue.Reference r : references()) {
        if (known.contains(r.target()) && "CASCADE".equals(r.whenErased())) {
          known.add(r.table());
        }
      }
    }
    references().stream().filter(r -> known.contains(r.table())).map(Catalogue.Reference::target).toList().forEach(known::add);
    Set<String> said = new HashSet<>(Baggage.GOES);
    said.addAll(Baggage.STAYS.keySet());
    assertThat(said).hasSize(Baggage.GOES.size() + Baggage.STAYS.size()).containsExactlyInAnyOrderElementsOf(known);
  }

  private List<Catalogue.Reference> references() {
    return first.transactions().read(first.transactions()::references);
  }
}
