package boundwright.web.phones;

/**
 * The phone's side of pairing.
 *
 * @param code the code, for the form
 * @param rights what this phone will be allowed
 * @param name what was typed
 * @param open whether others on the Wi-Fi can read along
 * @param refusal why the name was not taken; empty for nothing
 */
public record PairView(String code, String rights, String name, boolean open, String refusal) {}
