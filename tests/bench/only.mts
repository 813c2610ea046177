import { phoneBench } from './phoneBench'; await phoneBench();
