package boundwright.clip.contact;

/**
 * When a foot point landed or left.
 *
 * @param time [s]
 * @param sd standard deviation [s]
 */
record EventFit(double time, double sd) {}
