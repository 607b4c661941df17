package boundwright.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import boundwright.account.Account;
import boundwright.account.Accounts;
import boundwright.account.Bond;
import boundwright.account.Bonds;
import boundwright.account.Club;
import boundwright.account.Identity;
import boundwright.account.Role;
import boundwright.account.Session;
import boundwright.account.Visit;
import boundwright.quantity.RefusedException;
import boundwright.quantity.Secrets;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Which login of a department is whose, and who is away to log in there, on the real database. */
class BondStoreTest {
  private static final Identity PERSON = new Identity("https://login.invalid", "person-7");
  private static final String BROWSER = "0123456789abcdef0123456789abcdef";

  @TempDir Path folder;
  private Workbench bench;
  private Accounts accounts;
  private Bonds bonds;

  @BeforeEach
  void open() {
    bench = Stores.open(folder, Fixtures.CLOCK);
    accounts = new Accounts(bench.accounts(), Fixtures.CLOCK, new Random(3));
    bonds = new Bonds(bench.bonds(), accounts, Fixtures.CLOCK, new Random(5));
  }

  @AfterEach
  void close() {
    bench.close();
  }

  private Account account(String login, Role role) {
    return accounts.make(login, login, role, Club.FIRST, null);
  }

  private Session loggedIn(Account account) {
    String secret = accounts.enter(account.id(), true, "a browser");
    return accounts.seat(secret, true).orElseThrow().session();
  }

  @Test
  void whoSetOutFromOneServerComesBackToAnotherAndOfTwoAtOnceOne() throws Exception {
    Bonds.Going going = bonds.toLogIn(BROWSER);
    try (Workbench second = Stores.open(folder, Fixtures.CLOCK)) {
      Bonds there = new Bonds(second.bonds(), new Accounts(second.accounts(), Fixtures.CLOCK, new Random(7)), Fixtures.CLOCK, new Random(9));
      Callable<Boolean> here = () -> isTaken(bonds, going);
      Callable<Boolean> elsewhere = () -> isTaken(there, going);
      ExecutorService both = Executors.newFixedThreadPool(2);
      try {
        int taken = 0;
        for (Future<Boolean> f : both.invokeAll(List.of(here, elsewhere))) {
          taken += f.get() ? 1 : 0;
        }
        assertThat(taken).isEqualTo(1);
      } finally {
        both.shutdown();
      }
    }
  }

  private static boolean isTaken(Bonds by, Bonds.Going going) {
    try {
      Visit visit = by.back(going.state(), BROWSER);
      assertThat(visit.verifier()).isEqualTo(going.verifier()).hasSize(64);
      assertThat(visit.nonce()).isEqualTo(going.nonce());
      return true;
    } catch (RefusedException e) {
      return false;
    }
  }

  @Test
  void aLoginIsOneAccountsAndAnAccountHasOne() {
    Session mara = loggedIn(account("mara", Role.ASSISTANT));
    Session otis = loggedIn(account("otis", Role.READER));
    bonds.finish(back(bonds.toConnect(mara, BROWSER)), PERSON, true, "");
    assertThatThrownBy(() -> bonds.finish(back(bonds.toConnect(otis, BROWSER)), PERSON, true, "")).hasMessageContaining("connected with an account already");
    Identity other = new Identity(PERSON.issuer(), "person-8");
    assertThatThrownBy(() -> bonds.finish(back(bonds.toConnect(mara, BROWSER)), other, true, "")).hasMessageContaining("another login there");
    assertThat(bench.bonds().of(PERSON).map(Bond::accountId)).contains(mara.account().id());
    assertThatThrownBy(() -> bonds.remove(mara.account().id(), PERSON.issuer(), false)).hasMessageContaining("only way into your account");
    bonds.remove(mara.account().id(), PERSON.issuer(), true);
    assertThatThrownBy(() -> bonds.remove(mara.account().id(), PERSON.issuer(), true)).hasMessageContaining("not connected any more");
  }

  private Visit back(Bonds.Going going) {
    return bonds.back(going.state(), BROWSER);
  }

  @Test
  void whoLogsOutWhileAwayConnectsNothing() {
    Session mara = loggedIn(account("mara", Role.ASSISTANT));
    Bonds.Going going = bonds.toConnect(mara, BROWSER);
    bench.accounts().end(mara.account().id(), mara.id());
    assertThatThrownBy(() -> back(going)).as("it ended with the session").isInstanceOf(RefusedException.class);

    Session again = loggedIn(mara.account());
    Visit visit = back(bonds.toConnect(again, BROWSER));
    bench.accounts().end(mara.account().id(), again.id());
    assertThatThrownBy(() -> bonds.finish(visit, PERSON, true, "")).hasMessageContaining("logged out while you were away");
    assertThat(bench.bonds().of(PERSON)).isEmpty();
  }

  @Test
  void aLinkEndsWhatLetInBeforeAndIsNotUsedUpInVain() {
    Account mara = account("mara", Role.ASSISTANT);
    bonds.finish(back(bonds.toConnect(loggedIn(mara), BROWSER)), PERSON, true, "");
    Account otis = account("otis", Role.READER);
    String link = accounts.link(otis.id());
    assertThatThrownBy(() -> bonds.finish(back(bonds.byLink(link, BROWSER)), PERSON, true, "")).hasMessageContaining("connected with an account already");
    assertThat(accounts.offered(link)).as("nothing of it was done").isPresent();

    // a new link for the one whose login it is: their password and sessions end, and the login is theirs again
    String own = accounts.link(mara.id());
    Bonds.Came came = bonds.finish(back(bonds.byLink(own, BROWSER)), PERSON, true, "");
    assertThat(came.account().id()).isEqualTo(mara.id());
    assertThat(bench.accounts().sessions(mara.id())).hasSize(1);
    assertThatThrownBy(() -> bonds.finish(back(bonds.byLink(own, BROWSER)), PERSON, true, "")).hasMessageContaining("The link ended");
    accounts.enter(accounts.link(mara.id()), "four bounds then sand", true, "");
    assertThat(bench.bonds().of(PERSON)).as("a link used with a password ends the login, too").isEmpty();
  }

  @Test
  void theLinkOfTheTerminalConnectsNothing() {
    String entrance = accounts.entrance();
    assertThatThrownBy(() -> bonds.finish(back(bonds.byLink(entrance, BROWSER)), PERSON, true, "")).hasMessageContaining("The link ended");
    assertThat(accounts.offered(entrance)).isPresent();
  }

  @Test
  void anErasedAthletesLoginIsForgotten() {
    long ada = bench.athletes().add(Fixtures.athlete("Ada")).id();
    Account own = accounts.make("adas", "Adas", Role.ATHLETE, Club.FIRST, ada);
    bench.bonds().add(new Bond(PERSON, own.id(), Fixtures.CLOCK.instant()));
    bench.accounts().forgetAthlete(Club.FIRST, ada);
    assertThat(bench.bonds().of(PERSON)).isEmpty();
  }

  @Test
  void onlySoManyAreWaitedFor() {
    Visit some = new Visit(Secrets.hash("a"), Secrets.hash(BROWSER), "n", "v", Visit.Purpose.LOGIN, null, null, Fixtures.CLOCK.instant().plusSeconds(60));
    Visit more = new Visit(Secrets.hash("b"), Secrets.hash(BROWSER), "n", "v", Visit.Purpose.LOGIN, null, null, Fixtures.CLOCK.instant().plusSeconds(60));
    assertThat(bench.bonds().send(some, Fixtures.CLOCK.instant(), 1)).isTrue();
    assertThat(bench.bonds().send(more, Fixtures.CLOCK.instant(), 1)).isFalse();
    assertThat(bench.bonds().send(more, Fixtures.CLOCK.instant().plusSeconds(60), 1)).as("those that ended make room").isTrue();
  }
}
