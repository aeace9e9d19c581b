import { LogFault } from '#log';
import { createApp } from '../http/app.ts';
import { addDemo, openHouse } from '../http/house.ts';
import { listen } from '../http/serve.ts';

/** Serves until it is told to stop. PORT, HOST, AXLEHAND_DB. */
export async function run(): Promise<number> {
  const host = process.env.HOST || '127.0.0.1';
  const port = Number(process.env.PORT || 8090);
  try {
    const house = await openHouse();
    if (house.log.isNew) await addDemo(house);
    const listening = await listen(createApp(house), host, port);
    console.log(`Axlehand is at http://${host}:${listening.port}/`);
    await new Promise((stop) => process.once('SIGINT', stop).once('SIGTERM', stop));
    await listening.stop();
    house.log.close();
    return 0;
  } catch (error) {
    return complain(error, host, port);
  }
}

function complain(error: unknown, host: string, port: number): number {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  if (error instanceof LogFault) console.error(`axlehand: ${error.message} ${error.whatToDo}`);
  else if (code === 'EADDRINUSE') console.error(`axlehand: port ${port} is in use. Stop what uses it, or set PORT to another.`);
  else if (code === 'EADDRNOTAVAIL' || code === 'EACCES')
    console.error(`axlehand: cannot listen at ${host}:${port} (${code}). Set HOST and PORT.`);
  else throw error;
  return 1;
}
