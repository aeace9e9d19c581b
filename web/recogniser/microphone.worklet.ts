// Runs on the audio thread: hands the microphone's samples on, mixed to one channel, in blocks of about 20 ms.
declare abstract class AudioWorkletProcessor {
  readonly port: MessagePort;
}
declare function registerProcessor(name: string, processor: new () => AudioWorkletProcessor): void;

const blockSize = 1024;

class Tap extends AudioWorkletProcessor {
  private block = new Float32Array(blockSize);
  private filled = 0;

  process([input]: readonly (readonly Float32Array[])[]): boolean {
    const [first] = input ?? [];
    if (!input || !first) return true;
    for (let index = 0; index < first.length; index += 1) {
      let sum = 0;
      for (const channel of input) sum += channel[index] ?? 0;
      this.block[this.filled] = sum / input.length;
      this.filled += 1;
      if (this.filled === blockSize) this.hand();
    }
    return true;
  }

  private hand(): void {
    this.port.postMessage(this.block, [this.block.buffer]);
    this.block = new Float32Array(blockSize);
    this.filled = 0;
  }
}

registerProcessor('tap', Tap);
