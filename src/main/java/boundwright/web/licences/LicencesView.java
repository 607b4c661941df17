package boundwright.web.licences;

import java.util.List;

/**
 * The page of licences.
 *
 * @param notice what goes along with the program
 * @param libraries each with its licences
 * @param licences each with how its terms are kept
 */
public record LicencesView(List<String> notice, List<Library> libraries, List<Terms> licences) {
  public LicencesView {
    notice = List.copyOf(notice);
    libraries = List.copyOf(libraries);
    licences = List.copyOf(licences);
  }

  /** How the terms of a licence are kept. */
  public record Terms(String name, String kept) {}

  /** What ships with this build. */
  public static LicencesView now() {
    Accepted accepted = Shipped.accepted();
    return new LicencesView(
        List.of(Shipped.notice().strip().split("\n\n")), Shipped.libraries(),
        accepted.names().stream().map(n -> new Terms(n, String.valueOf(accepted.reasons().get(n)))).toList());
  }
}
