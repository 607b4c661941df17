package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.account.Account;
import boundwright.account.Accounts;
import boundwright.account.Club;
import boundwright.account.Membership;
import boundwright.account.Noted;
import boundwright.account.Role;
import boundwright.account.Session;
import boundwright.pairing.Owner;
import boundwright.pairing.Pairing;
import boundwright.pairing.PhoneRights;
import boundwright.quantity.RefusedException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Accounts on the real database: links, passwords, sessions and their ends. */
class AccountStoreTest {
  private static final String PASSWORD = "four bounds then sand";

  /** A watch that is set by hand. */
  private static final class Watch extends Clock {
    private Instant now = Instant.parse("2026-05-12T09:00:00Z");

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      throw new UnsupportedOperationException();
    }

    @Override
    public Instant instant() {
      return now;
    }
  }

  @TempDir Path folder;
  private final Watch watch = new Watch();
  private Workbench bench;
  private Accounts accounts;

  @BeforeEach
  void open() {
    bench = Workbench.open(folder, watch);
    accounts = new Accounts(bench.accounts(), watch, new Random(11));
  }

  @AfterEach
  void close() {
    bench.close();
  }

  private Account mara(Role role) {
    Account mara = accounts.make("Mara", "Mara Teststrand", role, Club.FIRST, null);
    accounts.enter(accounts.link(mara.id()), PASSWORD, true, "a browser");
    return mara;
  }

  @Test
  void aLinkWorksOnceAndSetsThePassword() {
    Account mara = accounts.make(" Mara ", "Mara Teststrand", Role.ASSISTANT, Club.FIRST, null);
    assertThat(mara.login()).isEqualTo("mara");
    String older = accounts.link(mara.id());
    String link = accounts.link(mara.id());
    assertThat(accounts.offered(older)).as("a newer one ends it").isEmpty();
    assertThatThrownBy(() -> accounts.enter(link, "short", true, "")).isInstanceOf(RefusedException.class).hasMessageContaining("12 to 200");
    assertThat(accounts.offered(link)).as("a refused password uses nothing up").isPresent();
    String secret = accounts.enter(link, PASSWORD, true, "a browser").orElseThrow();
    assertThat(accounts.enter(link, PASSWORD, true, "a browser")).isEmpty();
    assertThat(accounts.seat(secret, true).orElseThrow().membership().role()).isEqualTo(Role.ASSISTANT);
    assertThat(accounts.enter("MARA", PASSWORD, "10.0.0.1", true, "")).hasSize(32);
  }

  @Test
  void aLinkEndsWithItsWeek() {
    Account mara = accounts.make("mara", "Mara", Role.READER, Club.FIRST, null);
    String link = accounts.link(mara.id());
    watch.now = watch.now.plus(Accounts.LINK_LASTS).minusSeconds(1);
    assertThat(accounts.offered(link)).isPresent();
    watch.now = watch.now.plusSeconds(1);
    assertThat(accounts.offered(link)).isEmpty();
    watch.now = watch.now.minus(Duration.ofDays(30));
    assertThat(accounts.offered(link)).as("a clock set back makes none last longer").isEmpty();
  }

  @Test
  void afterFiveWrongPasswordsTheLoginWaitsFromEveryAddress() {
    mara(Role.ASSISTANT);
    for (int i = 0; i < Accounts.MOST_WRONG; i++) {
      String from = "10.0.0." + i;
      assertThatThrownBy(() -> accounts.enter("mara", "wrong words entirely", from, true, "")).hasMessageContaining("do not fit together");
    }
    assertThatThrownBy(() -> accounts.enter("mara", PASSWORD, "10.0.0.9", true, "")).isInstanceOf(Accounts.WaitException.class).hasMessageContaining("Wait 10 minutes");
    try (Workbench second = Workbench.open(folder, watch)) {
      Accounts other = new Accounts(second.accounts(), watch, new Random(12));
      assertThatThrownBy(() -> other.enter("mara", PASSWORD, "10.0.0.9", true, "")).as("another server counts with us").isInstanceOf(Accounts.WaitException.class);
    }
    watch.now = watch.now.plus(Accounts.WAIT).plusSeconds(1);
    assertThat(accounts.enter("mara", PASSWORD, "10.0.0.9", true, "")).hasSize(32);
  }

  @Test
  void whoeverTriesManyLoginsWaitsToo() {
    mara(Role.ASSISTANT);
    for (int i = 0; i < Accounts.MOST_WRONG_FROM; i++) {
      String login = "nobody" + i;
      assertThatThrownBy(() -> accounts.enter(login, "x", "10.0.0.7", true, "")).isNotInstanceOf(Accounts.WaitException.class);
    }
    assertThatThrownBy(() -> accounts.enter("mara", PASSWORD, "10.0.0.7", true, "")).isInstanceOf(Accounts.WaitException.class);
    assertThat(accounts.enter("mara", PASSWORD, "10.0.0.8", true, "")).as("from elsewhere").hasSize(32);
  }

  @Test
  void aLoginThatThereIsNotIsRefusedInTheSameWords() {
    mara(Role.ASSISTANT);
    assertThatThrownBy(() -> accounts.enter("mara", "wrong words", "a", true, "")).hasMessage(message(() -> accounts.enter("nobody", "wrong words", "b", true, "")));
  }

  private static String message(Runnable work) {
    try {
      work.run();
    } catch (RefusedException e) {
      return String.valueOf(e.getMessage());
    }
    throw new AssertionError("not refused");
  }

  @Test
  void aSessionEndsWhenItIsNotUsedAndWhenItIsOld() {
    mara(Role.ASSISTANT);
    String secret = accounts.enter("mara", PASSWORD, "a", true, "");
    for (Duration gone = Duration.ZERO; gone.compareTo(Accounts.LONGEST) < 0; gone = gone.plusDays(20)) {
      assertThat(accounts.seat(secret, true)).as("after " + gone).isPresent();
      watch.now = watch.now.plus(Duration.ofDays(20));
    }
    assertThat(accounts.seat(secret, true)).as("too old").isEmpty();
    String idle = accounts.enter("mara", PASSWORD, "a", true, "");
    watch.now = watch.now.plus(Accounts.IDLE);
    assertThat(accounts.seat(idle, true)).as("not used").isEmpty();
  }

  @Test
  void whatBeganInTheOpenIsNotLetInWhereItIsSealed() {
    mara(Role.ASSISTANT);
    String open = accounts.enter("mara", PASSWORD, "a", false, "");
    assertThat(accounts.seat(open, true)).isEmpty();
    assertThat(accounts.seat(open, false)).isPresent();
  }

  @Test
  void anotherPasswordEndsAllOtherBrowsersAndALinkAlsoThePhones() {
    Account mara = mara(Role.ASSISTANT);
    String one = accounts.enter("mara", PASSWORD, "a", true, "");
    String two = accounts.enter("mara", PASSWORD, "a", true, "");
    Session here = accounts.seat(two, true).orElseThrow().session();
    assertThatThrownBy(() -> accounts.setPassword(here, "not that", "five other words in a row")).hasMessageContaining("The old password is not that");
    accounts.setPassword(here, PASSWORD, "five other words in a row");
    assertThat(accounts.seat(one, true)).isEmpty();
    assertThat(accounts.seat(two, true)).isPresent();
    Pairing pairing = new Pairing(bench.phones(), watch, new Random(3));
    String phone = pairing.pair(pairing.offer(PhoneRights.LOG, new Owner(mara.id(), Club.FIRST)).text(), "Mara's", true).orElseThrow().secret();
    assertThat(pairing.known(phone, true).orElseThrow().owner().account()).isEqualTo(mara.id());
    accounts.enter(accounts.link(mara.id()), "yet another row of words", true, "");
    assertThat(accounts.seat(two, true)).isEmpty();
    assertThat(pairing.known(phone, true)).isEmpty();
  }

  @Test
  void aClubKeepsAHeadCoach() {
    Account head = mara(Role.HEAD_COACH);
    assertThatThrownBy(() -> accounts.setActive(head.id(), false)).hasMessageContaining("only head coach");
    assertThatThrownBy(() -> accounts.leave(head.id(), Club.FIRST)).hasMessageContaining("only head coach");
    assertThatThrownBy(() -> accounts.setRole(head.id(), Club.FIRST, Role.READER, null)).hasMessageContaining("only head coach");
    Account second = accounts.make("second", "Second", Role.HEAD_COACH, Club.FIRST, null);
    accounts.setActive(head.id(), false);
    assertThatThrownBy(() -> accounts.enter("mara", PASSWORD, "a", true, "")).hasMessageContaining("do not fit");
    assertThatThrownBy(() -> accounts.setActive(second.id(), false)).as("a shut out head coach counts for nothing").hasMessageContaining("only head coach");
  }

  @Test
  void shutOutMeansOutNow() {
    mara(Role.ASSISTANT);
    String secret = accounts.enter("mara", PASSWORD, "a", true, "");
    accounts.setActive(bench.accounts().byLogin("mara").orElseThrow().id(), false);
    assertThat(accounts.seat(secret, true)).isEmpty();
  }

  @Test
  void whoSitsAtTheMachineIsTheFirstHeadCoachAndKeepsTheirPassword() {
    Account made = accounts.atTheMachine();
    assertThat(made.login()).isEqualTo("coach");
    assertThat(accounts.atTheMachine()).isEqualTo(made);
    accounts.enter(accounts.link(made.id()), PASSWORD, true, "");
    assertThat(accounts.enter(accounts.entrance(), "", false, "")).isPresent();
    assertThat(accounts.enter("coach", PASSWORD, "a", true, "")).as("the password is as it was").hasSize(32);
  }

  @Test
  void athletesNeedToBeOneAndOthersAreNone() {
    assertThatThrownBy(() -> accounts.make("ath", "A", Role.ATHLETE, Club.FIRST, null)).hasMessageContaining("which athlete");
    Account coach = accounts.make("coachy", "C", Role.ASSISTANT, Club.FIRST, 7L);
    assertThat(bench.accounts().memberships(coach.id())).containsExactly(new Membership(coach.id(), Club.FIRST, Role.ASSISTANT, null));
    assertThatThrownBy(() -> accounts.make("COACHY", "C", Role.ASSISTANT, Club.FIRST, null)).hasMessageContaining("taken");
    for (String bad : new String[] {"", "ab", "with space", "ünïcode", "-dash", "a".repeat(61)}) {
      assertThatThrownBy(() -> accounts.make(bad, "C", Role.READER, Club.FIRST, null)).as(bad).isInstanceOf(RefusedException.class);
    }
  }

  @Test
  void whoeverIsErasedHasNoAccountMoreUnlessElsewhere() {
    Account only = accounts.make("otis", "Otis", Role.ATHLETE, Club.FIRST, 4L);
    Account both = accounts.make("ilka", "Ilka", Role.ATHLETE, Club.FIRST, 5L);
    Club other = accounts.addClub("Other pit");
    accounts.setRole(both.id(), other.id(), Role.ASSISTANT, null);
    bench.accounts().forgetAthlete(Club.FIRST, 4);
    bench.accounts().forgetAthlete(Club.FIRST, 5);
    bench.accounts().forgetAthlete(other.id(), 5);
    assertThat(bench.accounts().byId(only.id())).isEmpty();
    assertThat(bench.accounts().memberships(both.id())).extracting(Membership::clubId).containsExactly(other.id());
  }

  @Test
  void notesAreNeverChangedNorDeleted() {
    bench.accounts().note(new Noted(watch.now, Club.FIRST, null, "this machine", "erased an athlete", "athlete 4"));
    assertThat(bench.accounts().notes(Club.FIRST, 10)).singleElement().extracting(Noted::what).isEqualTo("erased an athlete");
    for (String sql : new String[] {"UPDATE noted SET what = 'nothing'", "DELETE FROM noted"}) {
      assertThatThrownBy(() -> bench.database().write(h -> h.createUpdate(sql).execute())).as(sql).isInstanceOf(RuntimeException.class);
    }
    assertThat(bench.accounts().notes(Club.FIRST, 10)).hasSize(1);
  }
}
