// Keeps the screen on while a job is open. The lock is lost whenever the page is hidden, and asked for again.
let lock: WakeLockSentinel | undefined;

export async function keepAwake(wanted: () => boolean): Promise<void> {
  const ask = async (): Promise<void> => {
    if (document.visibilityState !== 'visible' || !wanted() || (lock && !lock.released)) return;
    // Absent or refused is no error: the screen then follows the device's own settings.
    lock = await navigator.wakeLock?.request('screen').catch(() => undefined);
  };
  document.addEventListener('visibilitychange', () => void ask());
  addEventListener('pointerdown', () => void ask());
  await ask();
}
