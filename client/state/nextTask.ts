/** Does something as a task of its own, behind whatever waits already: a click, a frame. */
export function nextTask(act: () => void): void {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = () => {
    port1.close();
    act();
  };
  port2.postMessage(null);
}
