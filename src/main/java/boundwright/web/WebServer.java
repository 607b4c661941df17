package boundwright.web;

import boundwright.account.Accounts;
import boundwright.account.Bonds;
import boundwright.account.Passkeys;
import boundwright.pairing.Pairing;
import boundwright.quantity.RefusedException;
import boundwright.store.Workbench;
import boundwright.store.club.Clubs;
import boundwright.store.transfer.Transfers;
import boundwright.web.certificate.OwnCertificate;
import boundwright.web.department.Department;
import boundwright.web.door.Callers;
import boundwright.web.door.LocalName;
import boundwright.web.door.Notes;
import boundwright.web.door.Reach;
import boundwright.web.door.WrongCodes;
import boundwright.web.page.Assets;
import boundwright.web.squad.FirstPage;
import io.javalin.Javalin;
import io.javalin.util.JavalinBindException;
import java.nio.file.Path;
import java.security.SecureRandom;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import java.util.random.RandomGenerator;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.jspecify.annotations.Nullable;

/** The running pages. Close it to stop them; the workbench stays open. */
public final class WebServer implements AutoCloseable {
  /** A certificate needs a name, also where none is answered. */
  private static final String USUAL_NAME = "boundwright" + LocalName.ENDING;

  private final Javalin server;
  private final Reach reach;
  private final Pairing pairing;
  private final Accounts accounts;
  private final Department department;
  private final @Nullable OwnCertificate certificate;
  private final @Nullable LocalName name;
  private final Clubs clubs;
  private final CountDownLatch closing;

  private WebServer(
      Javalin server, Reach reach, Pairing pairing, Accounts accounts, Department department, @Nullable OwnCertificate certificate,
      @Nullable LocalName name, Clubs clubs, CountDownLatch closing) {
    this.department = department;
    this.closing = closing;
    this.server = server;
    this.reach = reach;
    this.pairing = pairing;
    this.accounts = accounts;
    this.certificate = certificate;
    this.name = name;
    this.clubs = clubs;
  }

  /**
   * Opens the pages of this workbench over plain http.
   *
   * @param host the address to listen on, {@code 127.0.0.1} unless the coach says otherwise, {@code all} for every one
   * @param port 1 to 65535, or 0 for any that is free
   * @throws RefusedException if the port is in use or the address is not one of this machine's
   */
  public static WebServer start(Workbench bench, String host, int port) {
    return start(bench, new Opening(host, port, false, "", Path.of(""), "", null));
  }

  /** Opens the pages of this workbench. */
  public static WebServer start(Workbench bench, Opening opening) {
    return start(bench, opening, null);
  }

  /**
   * Opens the pages of this workbench.
   *
   * @param begun the front page if it is being worked out already
   */
  public static WebServer start(Workbench bench, Opening opening, @Nullable FirstPage begun) {
    return start(bench, opening, begun, new SecureRandom());
  }

  /** As {@link #start(Workbench, Opening)}; {@code random} must be one that cannot be guessed. */
  static WebServer start(Workbench bench, Opening opening, @Nullable FirstPage begun, RandomGenerator random) {
    Reach reach = Reach.of(opening.host(), opening.https());
    Listening listening = Listening.on(reach, opening.port());
    reach.behind(opening.behind());
    Pairing pairing = new Pairing(bench.phones(), bench.clock(), random);
    Accounts accounts = new Accounts(bench.accounts(), bench.clock(), random);
    Department department = new Department(opening.department(), bench.clock());
    List<String> names = opening.name().isEmpty() ? List.of() : List.of(opening.name() + LocalName.ENDING);
    @Nullable OwnCertificate certificate =
        reach.https()
            ? OwnCertificate.of(opening.keys(), names.isEmpty() ? List.of(USUAL_NAME) : names, reach.addresses(), bench.clock())
            : null;
    CountDownLatch closing = new CountDownLatch(1);
    Clubs clubs = new Clubs(bench, true);
    Houses houses =
        new Houses(
            new House.Common(
                bench, reach, pairing, accounts, new Passkeys(bench.passkeys(), bench.clock(), random),
                new Bonds(bench.bonds(), accounts, bench.clock(), random), department, new Callers(pairing, accounts, reach),
                new Notes(bench.accounts(), bench.clock()), new WrongCodes(bench.accounts(), bench.clock()), new Assets(), certificate, random, closing,
                new Transfers(bench, clubs::of, random), begun),
            clubs);
    Javalin server =
        Javalin.create(
            config -> {
              listening.add(config.jetty, certificate == null ? null : tls(certificate));
              houses.first().configure(config);
              config.jetty.modifyServletContextHandler(houses::standBefore);
              config.events.serverStopping(houses::close);
            });
    try {
      server.start();
    } catch (JavalinBindException e) {
      server.stop();
      throw listening.inUse(e);
    }
    @Nullable LocalName name = names.isEmpty() || reach.addresses().isEmpty() ? null : LocalName.answer(opening.name(), reach.addresses());
    if (name != null && !name.name().isEmpty()) {
      reach.alsoCalled(name.name());
    }
    return new WebServer(server, reach, pairing, accounts, department, certificate, name, clubs, closing);
  }

  /** All routes as they are registered, each as {@code GET /athlete/{id}}. */
  List<String> routes() {
    return server.unsafe.internalRouter.allHttpHandlers().stream()
        .map(p -> p.endpoint)
        .filter(e -> e.method.isHttpMethod())
        .map(e -> e.method + " " + e.path)
        .toList();
  }

  /** By which addresses the pages are reached. */
  public Reach reach() {
    return reach;
  }

  /** Whether phones must trust a new certificate, because the old one did not cover the names or nears its end. */
  public boolean trustAnew() {
    OwnCertificate own = certificate;
    return own != null && own.anew();
  }

  /** Whether a name was wished for and the network does not carry it. */
  public boolean nameless() {
    LocalName wished = name;
    return wished != null && wished.name().isEmpty();
  }

  /** Lets phones in. */
  public Pairing pairing() {
    return pairing;
  }

  /** Accounts, and the link for whoever sits at the machine itself. */
  public Accounts accounts() {
    return accounts;
  }

  /** The department whose logins are taken, or none. */
  public Department department() {
    return department;
  }

  /** Where whoever sits at the machine itself comes in; a link that works once if others can reach the pages too. */
  public String entrance() {
    return reach.own() + (reach.forOthers() ? "/enter/" + accounts.entrance() : "");
  }

  /** Waits until somebody closes the program from a page. */
  public void awaitClosing() throws InterruptedException {
    closing.await();
  }

  /** Reads the films of every club from now on, see {@link Clubs#readFilms}. */
  public void readFilms(Consumer<String> trouble) {
    clubs.readFilms(trouble);
  }

  /** The port that the pages are on. */
  public int port() {
    return server.port();
  }

  @Override
  public void close() {
    server.stop();
    LocalName leaving = name;
    if (leaving != null) {
      leaving.close();
    }
  }

  private static SslContextFactory.Server tls(OwnCertificate certificate) {
    SslContextFactory.Server tls = new SslContextFactory.Server();
    tls.setKeyStore(certificate.serving());
    tls.setKeyStorePassword("");
    // one certificate for all names and for a client that asks by address and so names nobody
    tls.setSniRequired(false);
    return tls;
  }
}
